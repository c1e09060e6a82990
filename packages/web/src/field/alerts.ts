// Being told without looking: a tone, a buzz, a line for screen readers. Tones and buzzes only where asked for.

import { effect, signal } from '@preact/signals-core';
import { isGroup } from '../state/path.js';
import { keep, kept } from '../state/store.js';

const before = kept('alerts');
export const sound = signal(isGroup(before) && before.sound === true);
export const vibration = signal(isGroup(before) && before.vibration === true);
effect(() => keep('alerts', { sound: sound.value, vibration: vibration.value }));

let audio: AudioContext | undefined;

/** One tone a beep. Browsers allow it once the page has been touched, which choosing sound does. */
function beep(times: number): void {
  try {
    audio ??= new AudioContext();
    void audio.resume();
    for (let i = 0; i < times; i++) {
      const at = audio.currentTime + i * 0.25;
      const tone = audio.createOscillator();
      const loudness = audio.createGain();
      tone.frequency.value = 660;
      loudness.gain.setValueAtTime(0.25, at);
      loudness.gain.exponentialRampToValueAtTime(0.001, at + 0.2);
      tone.connect(loudness).connect(audio.destination);
      tone.start(at);
      tone.stop(at + 0.2);
    }
  } catch {
    // No sound device: the page still shows what is due.
  }
}

/** Ahead of a cue once, at the cue twice. */
export function alertFor(urgency: 'soon' | 'due'): void {
  const times = urgency === 'soon' ? 1 : 2;
  if (sound.peek()) beep(times);
  if (vibration.peek()) navigator.vibrate?.(urgency === 'soon' ? 200 : [300, 150, 300]);
}
