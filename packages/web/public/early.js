// Before anything is drawn: the colours that were chosen, and black where the page comes back into the field.
// In the dark a flash of a bright page costs many minutes of sight.
(() => {
  const root = document.documentElement;
  const kept = (name) => {
    try {
      return JSON.parse(localStorage.getItem(`evenfall.${name}`));
    } catch {
      return undefined;
    }
  };
  const dark = matchMedia('(prefers-color-scheme: dark)').matches;
  const theme = kept('theme');
  root.dataset.theme = theme === 'light' || theme === 'dark' ? theme : dark ? 'dark' : 'light';
  const field = kept('inField') === true;
  root.toggleAttribute('data-field', field);
  if (field) {
    const black = Object.assign(document.createElement('meta'), { name: 'theme-color', content: '#000000' });
    document.head.prepend(black); // the first one counts
  }
})();
