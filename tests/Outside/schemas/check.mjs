// node check.mjs SCHEMAS DOCUMENTS...: compiles every schema of a folder in ajv's class for draft 2020-12, its options as they come, and holds every document (a file, or all of a folder)
// against the schema of its own "format". Prints each complaint on a line; exit 1 when there is one.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';

const [folder, ...places] = process.argv.slice(2);
const complaints = [];
const json = (path) => JSON.parse(readFileSync(path, 'utf8'));
const walk = (path) => (statSync(path).isDirectory() ? readdirSync(path).flatMap((name) => walk(join(path, name))) : path.endsWith('.json') ? [path] : []);

// What ajv only warns of is a complaint too.
const warned = (text) => complaints.push(`warning: ${text}`);
const ajv = new Ajv({ logger: { log: warned, warn: warned, error: warned } });
addFormats(ajv);
const schemas = readdirSync(folder).filter((name) => name.endsWith('.json')).map((name) => [name, json(join(folder, name))]);
const byFormat = new Map();
for (const [name, schema] of schemas) {
  try {
    ajv.addSchema(schema);
  } catch (problem) {
    complaints.push(`${name}: ${problem.message}`);
  }
}
for (const [name, schema] of schemas) {
  try {
    ajv.getSchema(schema.$id);
  } catch (problem) {
    complaints.push(`${name}: does not compile: ${problem.message}`);
    continue;
  }
  for (const part of [schema, ...(schema.oneOf ?? []), ...(schema.anyOf ?? [])]) {
    const format = part.properties?.format;
    for (const word of format?.enum ?? (format?.const ? [format.const] : [])) byFormat.set(word, schema.$id);
  }
}
let held = 0;
for (const path of places.flatMap(walk)) {
  const document = json(path);
  const id = byFormat.get(document.format);
  if (!id) {
    complaints.push(`${path}: no schema for the format "${document.format}"`);
    continue;
  }
  const holds = ajv.getSchema(id);
  held++;
  if (!holds(document)) complaints.push(...holds.errors.map((error) => `${path}: ${error.instancePath || '/'} ${error.message}`));
}
complaints.forEach((line) => console.log(line));
console.log(`${schemas.length} schemas, ${held} documents, ${complaints.length} complaints`);
process.exit(complaints.length > 0 ? 1 : 0);
