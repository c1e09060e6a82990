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
  root.toggleAttribute('data-field', kept('inField') === true);
})();
