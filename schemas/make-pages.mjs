// Writes docs/formats/*.md, one page a format, from the schemas in this folder, so that page and schema cannot drift apart.
// node schemas/make-pages.mjs [FOLDER]     FOLDER is docs/formats unless given.
import { mkdirSync, readFileSync, readdirSync, writeFileSync, existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const target = process.argv[2] ?? join(here, '..', 'docs', 'formats');
const schemas = new Map(readdirSync(here).filter(name => name.endsWith('.json')).sort().map(name => [name, JSON.parse(readFileSync(join(here, name), 'utf8'))]));

/** The node a $ref leads to, in its own file or another; [node, file]. */
function follow(node, file) {
  while (node.$ref) {
    const [name, pointer] = node.$ref.split('#');
    file = name || file;
    const found = (pointer ?? '').split('/').filter(Boolean).reduce((at, key) => at[key], schemas.get(file));
    const { $ref, ...own } = node;
    node = { ...found, ...own };
  }
  return [node, file];
}

/** What a field may hold, in words. */
function kind(raw, file) {
  const [node, at] = follow(raw, file);
  if (node.const !== undefined) { return `\`${JSON.stringify(node.const)}\``; }
  if (node.enum) { return node.enum.map(word => `\`${word}\``).join(', '); }
  if (node.oneOf ?? node.anyOf) { return [...new Set((node.oneOf ?? node.anyOf).filter(one => one.type || one.$ref || one.const !== undefined || one.enum).map(one => kind(one, at)))].join(' or ') || (node.type ?? 'object'); }
  if (raw.$ref?.startsWith('quantity.json#/$defs/')) {
    const name = raw.$ref.split('/').at(-1);
    return name.startsWith('written') ? 'quantity, written' : `quantity: ${name.replace(/[A-Z]/g, letter => ' ' + letter.toLowerCase())}`;
  }
  const type = Array.isArray(node.type) ? node.type.join(' or ') : node.type ?? 'anything';
  const low = node.minimum ?? node.exclusiveMinimum, high = node.maximum ?? node.exclusiveMaximum;
  const range = low !== undefined && high !== undefined ? `, ${low} to ${high}` : low !== undefined ? `, ${low} or more` : high !== undefined ? `, at most ${high}` : '';
  return (type === 'array' ? 'list' : type === 'integer' ? 'whole number' : type === 'string' ? 'text' : type) + range;
}

function rows(raw, file, path, required, seen, out) {
  const [node, at] = follow(raw, file);
  if (path) {
    const words = (raw.description ?? (raw.$ref?.startsWith('quantity.json') ? '' : node.description) ?? '').replaceAll('|', '\\|').replaceAll('\n', ' ');
    out.push(`| \`${path}\` | ${kind(raw, file).replaceAll('|', '\\|')} | ${required ? 'yes' : ''} | ${words} |`);
  }
  if (raw.$ref?.startsWith('quantity.json') || seen.includes(node)) { return; }
  const parts = [node, ...(node.oneOf ?? []), ...(node.anyOf ?? []), ...(node.allOf ?? [])].map(one => follow(one, at));
  for (const [part, place] of parts) {
    for (const [name, field] of Object.entries(part.properties ?? {})) {
      rows(field, place, path ? `${path}.${name}` : name, (part.required ?? []).includes(name), [...seen, node], out);
    }
    if (part.items && typeof part.items === 'object') { rows(part.items, place, `${path}[]`, false, [...seen, node], out); }
  }
}

function page(name, schema) {
  const out = [];
  rows(schema, name, '', false, [], out);
  const lines = [`# ${schema.title}`, '', schema.description ?? '', schema.description ? '' : null,
    `Schema: [\`schemas/${name}\`](../../schemas/${name}). Written by \`schemas/make-pages.mjs\` from it.`, ''].filter(line => line !== null);
  const quantities = Object.entries(schema.$defs ?? {}).filter(() => name === 'quantity.json').map(([key, one]) => `| \`${key}\` | ${one.type ?? ''} | ${one.description ?? ''} |`);
  if (quantities.length) { lines.push('| Quantity | Written as | Meaning |', '|---|---|---|', ...quantities, ''); }
  if (out.length) { lines.push('| Field | Holds | Needed | Meaning |', '|---|---|---|---|', ...[...new Set(out)], ''); }
  const example = join(here, '..', 'docs', 'formats', 'examples', name);
  if (existsSync(example)) { lines.push('For example:', '', '```json', readFileSync(example, 'utf8').trim(), '```', ''); }
  return lines.join('\n');
}

mkdirSync(target, { recursive: true });
const index = ['# File formats', '', 'Every file carries its version in `format`. Unknown fields are refused with the nearest known name; older versions are read for ever.',
  'In files that people write a quantity is text with its unit, and a length of a part may carry its 95 % half-width (`6.2 mm ± 0.05 mm`, `2.45 in ± 1 %`); in files that the program writes it is an object in SI units with its 95 % interval and basis.',
  'The schemas in `schemas/` are JSON Schema, draft 2020-12, and compile in ajv (`ajv/dist/2020` with `ajv-formats`, options as they come): `npm ci --prefix tests/Outside/schemas`, then `node tests/Outside/schemas/check.mjs schemas FILES`.', '',
  '| Format | Page |', '|---|---|'];
for (const [name, schema] of schemas) {
  const stem = name.replace('.json', '');
  writeFileSync(join(target, stem + '.md'), page(name, schema));
  index.push(`| ${schema.title} | [${stem}](${stem}.md) |`);
}
writeFileSync(join(target, 'README.md'), index.join('\n') + '\n');
