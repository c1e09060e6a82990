// A plugin for the bundler: what a module works out while it loads is marked as pure, so that whoever bundles the package
// leaves out what is not asked for. As separate files the modules were left out whole; put together they would all stay.

import { RolldownMagicString } from 'rolldown';

/** @type {import('rolldown').Plugin} */
export const pureValues = {
  name: 'pure-values',
  renderChunk(code) {
    const text = new RolldownMagicString(code);
    for (const statement of this.parse(code).body) {
      const declaration = statement.type === 'ExportNamedDeclaration' ? statement.declaration : statement;
      if (declaration?.type !== 'VariableDeclaration') continue;
      for (const { init } of declaration.declarations) {
        if (init == null || !isWorkedOut(init)) continue;
        text.appendLeft(init.start, '/* @__PURE__ */ (() => (');
        text.appendRight(init.end, '))()');
      }
    }
    return { code: text.toString(), map: JSON.parse(text.generateMap({ hires: true }).toString()) };
  },
};

const WORK = /^(Call|New|Member|TaggedTemplate)Expression$|^SpreadElement$/;

/** Whether anything runs where this stands; what a function does, it does when it is called. */
function isWorkedOut(node) {
  if (Array.isArray(node)) return node.some(isWorkedOut);
  if (node === null || typeof node !== 'object') return false;
  if (/Function/.test(node.type ?? '')) return false;
  return WORK.test(node.type ?? '') || Object.values(node).some(isWorkedOut);
}
