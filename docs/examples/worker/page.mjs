// A small page that plans. The latest request is answered; one that is out of date is neither waited for nor shown.
// A bundler finds the worker by the line that makes it.

const [form] = document.forms;
const [answer] = document.getElementsByTagName('output');

let worker;
let asked = 0;
let busy = false;

function start() {
  worker = new Worker(new URL('./worker.mjs', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }) => {
    busy = data.id !== asked;
    if (!busy) show(data.errors ?? linesOf(data.plan));
  };
  worker.onerror = (event) => {
    event.preventDefault();
    show(['planning failed; reload the page']);
  };
}

function plan() {
  // What it is at is no longer wanted; a worker costs less than the wait.
  if (busy) {
    worker.terminate();
    start();
  }
  busy = true;
  answer.ariaBusy = 'true';
  worker.postMessage({ id: ++asked, file: fileOf(new FormData(form)) });
}

/** The shoot file that the form says. Nothing is checked here: the library's reader does it, and says what is wrong. */
function fileOf(said) {
  return {
    format: 'evenfall-shoot/1',
    place: {
      latitudeDeg: numberOf(said.get('latitude')),
      longitudeDeg: numberOf(said.get('longitude')),
      timeZone: said.get('zone'), // without one the times would be the sun's, not those of the clock there
    },
    date: said.get('date'),
    intervalS: numberOf(said.get('interval')),
    camera: {
      shutter: { shortest: '1/4000', longest: '30' },
      iso: { lowest: 100, highest: numberOf(said.get('iso')) },
      aperture: '4',
    },
  };
}

/** An empty field is no number, where Number would make it 0. */
const numberOf = (text) => (text.trim() === '' ? null : Number(text));

function show(lines) {
  answer.replaceChildren(
    ...lines.map((line) => {
      const paragraph = document.createElement('p');
      paragraph.textContent = line; // as text: whatever it says, it is no markup
      return paragraph;
    }),
  );
  answer.ariaBusy = 'false';
}

function linesOf({ kind, infeasible, summary, cues }) {
  if (kind === 'infeasible') return [infeasible.text, ...infeasible.remedies.map(({ text }) => text)];
  return [
    `${summary.frameCount} frames from ${clock(summary.startAt)} to ${clock(summary.endAt)}, ${summary.cueCount} cues`,
    ...cues.map(({ at, changes }) =>
      [clock(at), ...changes.map(({ control, from, to }) => `${control} ${from} → ${to}`)].join('  '),
    ),
  ];
}

/** 18:42:13: times in a plan are the place's own, and stand in its text. */
const clock = (at) => at.slice(11, 19);

form.addEventListener('input', plan);
form.addEventListener('submit', (event) => event.preventDefault());
start();
plan();
