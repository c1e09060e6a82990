// A build step: lets the bundler drop the classes of Chart.js that this page does not use. Their static fields read
// other objects, which might do anything, so it keeps them all; written as the value of a call that is marked pure,
// each goes unless something asks for it.

import type { Plugin } from 'vite';

export function pureClasses(): Plugin {
  return {
    name: 'pure-classes',
    apply: 'build',
    transform: {
      filter: { id: /chart\.js\/dist\/chart\.js$/ },
      handler(code) {
        let text = '';
        let from = 0;
        for (const node of this.parse(code).body) {
          if (node.type !== 'ClassDeclaration' || node.id === null) continue;
          text += code.slice(from, node.start);
          text += `const ${node.id.name} = /* @__PURE__ */ (() => ${code.slice(node.start, node.end)})();`;
          from = node.end;
        }
        return { code: text + code.slice(from), map: null };
      },
    },
  };
}
