// A build step: puts script, style and icon into one HTML file that works from disk, where modules are blocked.

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

export function oneFile(): Plugin {
  let root = '';
  let early = '';
  return {
    name: 'one-file',
    apply: 'build',
    enforce: 'post',
    configResolved(config) {
      root = config.root;
      early = readFileSync(join(root, 'public/early.js'), 'utf8');
    },
    transformIndexHtml: {
      order: 'pre',
      handler: (page) => page.replace('<script src="/early.js">', () => `<script>${early}`),
    },
    generateBundle(_options, bundle) {
      const page = bundle['index.html'];
      if (page?.type !== 'asset') throw new Error('the build has no index.html');
      let script = '';
      let style = '';
      for (const [name, file] of Object.entries(bundle)) {
        if (name === 'index.html') continue;
        // A closing tag inside a string would end the element early.
        if (file.type === 'chunk') script += file.code.replaceAll('</script', '<\\/script');
        else if (name.endsWith('.css')) style += String(file.source);
        delete bundle[name];
      }
      const icon = Buffer.from(readFileSync(join(root, 'public/icon.svg'))).toString('base64');
      const policy = [
        "default-src 'none'",
        `script-src ${hashOf(early)} ${hashOf(script)}`,
        `style-src ${hashOf(style)}`,
        'img-src data:',
        'worker-src blob: data:',
        "base-uri 'none'",
        "form-action 'none'",
      ].join('; ');
      page.source = String(page.source)
        .replace(/<script type="module"[^>]*><\/script>/g, '')
        .replace(/<link rel="(?:modulepreload|stylesheet|manifest|apple-touch-icon|icon)"[^>]*>/g, '')
        .replace(/content="default-src[^"]*"/, () => `content="${policy}"`)
        .replace(
          '</head>',
          () => `<link rel="icon" href="data:image/svg+xml;base64,${icon}"><style>${style}</style></head>`,
        )
        .replace('</body>', () => `<script>${script}</script></body>`);
    },
  };
}
