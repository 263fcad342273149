/** What a manifest must keep to beyond the schemas; Excel itself passes over most of these faults without a word. */
const fs = require('node:fs');
const path = require('node:path');

/** The sets that make up the Excel this add-in asks for. */
const REQUIRED = { SharedRuntime: '1.1', CustomFunctionsRuntime: '1.3', ExcelApi: '1.9' };
const TEXT_LIMITS = { ShortStrings: 125, LongStrings: 250 };
const ID_LIMIT = 32;

/** Which source a built file comes from; icons keep their names. */
const SOURCES = {
  'taskpane.html': 'src/pane/taskpane.html',
  'functions.js': 'src/hosts/excel/functions.ts',
  'functions.json': 'src/hosts/excel/metadata.ts',
  'help.html': 'src/build/helpPage.ts',
  'support.html': 'src/build/supportPage.ts',
};

const contentOf = (file) =>
  fs.statSync(file, { throwIfNoEntry: false })?.isFile() ? fs.readFileSync(file) : undefined;

/** Looks a file of the manifest up in a finished build. */
const inBuild = (folder) => (name) => contentOf(path.join(folder, name));
/** Looks a file of the manifest up among the sources, before anything is built. */
const inSources = (root) => (name) =>
  contentOf(path.join(root, SOURCES[name] ?? path.join('src/hosts/excel', name)));

const all = (text, pattern) => [...text.matchAll(pattern)];
const repeated = (list) => [...new Set(list.filter((item, i) => list.indexOf(item) !== i))];

/** Width and height of a PNG picture. */
const pngSize = (bytes) =>
  bytes.subarray(1, 4).toString('latin1') === 'PNG'
    ? [bytes.readUInt32BE(16), bytes.readUInt32BE(20)]
    : undefined;

/** Id and address or text of every resource. */
const resourcesOf = (xml) =>
  new Map(all(xml, /<bt:(?:Image|Url|String) id="([^"]*)" DefaultValue="([^"]*)"/g).map((m) => [m[1], m[2]]));
const residIn = (xml, pattern) => pattern.exec(xml)?.[1];

function identity(xml) {
  const faults = [];
  if (!/<Id>[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}<\/Id>/i.test(xml)) faults.push('Id is no GUID');
  if (!/<Version>\d{1,5}(\.\d{1,5}){1,3}<\/Version>/.test(xml))
    faults.push('Version is not two to four numbers of up to five digits');
  if (!/<SupportUrl DefaultValue="[^"]+"/.test(xml)) faults.push('there is no SupportUrl');
  return faults;
}

const addresses = (xml) =>
  all(xml, /DefaultValue="(?!https:\/\/)([a-z][a-z+.-]*:[^"]*)"/gi).map(
    (m) => `not an https address: ${m[1]}`,
  );

function references(xml) {
  const ids = all(xml, /<bt:(?:Image|Url|String) id="([^"]*)"/g).map((m) => m[1]);
  const used = all(xml, /resid="([^"]*)"/g).map((m) => m[1]);
  return [
    ...repeated(ids).map((id) => `two resources are called ${id}`),
    ...used.filter((id) => !ids.includes(id)).map((id) => `no resource is called ${id}`),
    ...ids.filter((id) => !used.includes(id)).map((id) => `nothing uses the resource ${id}`),
    ...[...new Set([...ids, ...used])]
      .filter((id) => id.length > ID_LIMIT)
      .map((id) => `longer than ${ID_LIMIT} characters: ${id}`),
  ];
}

function texts(xml) {
  return Object.entries(TEXT_LIMITS).flatMap(([name, limit]) => {
    const block = residIn(xml, new RegExp(`<bt:${name}>([\\s\\S]*?)</bt:${name}>`)) ?? '';
    return all(block, /id="([^"]*)" DefaultValue="([^"]*)"/g)
      .filter((m) => m[2].length > limit)
      .map((m) => `the text ${m[1]} is longer than ${limit} characters`);
  });
}

/** With a shared runtime, functions, pane and runtime must be one page, or Excel loads none of it. */
function onePage(xml) {
  const runtime = residIn(xml, /<Runtime resid="([^"]*)"/);
  const page = residIn(xml, /<Page>\s*<SourceLocation resid="([^"]*)"/);
  const panes = all(xml, /<Action xsi:type="ShowTaskpane">[\s\S]*?<SourceLocation resid="([^"]*)"/g).map(
    (m) => m[1],
  );
  const start = residIn(xml, /<DefaultSettings>\s*<SourceLocation DefaultValue="([^"]*)"/);
  const faults = [];
  if (!runtime || page !== runtime || panes.length === 0 || panes.some((pane) => pane !== runtime))
    faults.push('Runtime, Page and ShowTaskpane do not name one resource');
  else if (resourcesOf(xml).get(runtime) !== start)
    faults.push('DefaultSettings starts another page than the runtime');
  return faults;
}

function requirements(xml) {
  const asked = new Map(all(xml, /<Set Name="([^"]*)" MinVersion="([^"]*)"/g).map((m) => [m[1], m[2]]));
  return Object.entries(REQUIRED)
    .filter(([name, version]) => asked.get(name) !== version)
    .map(([name, version]) => `does not ask for ${name} ${version}`);
}

/** Every address under the start page's folder must be a file, and every icon as large as it says. */
function files(xml, look) {
  const start = residIn(xml, /<DefaultSettings>\s*<SourceLocation DefaultValue="([^"]*)"/) ?? '';
  const base = start.slice(0, start.lastIndexOf('/') + 1);
  const local = all(xml, /DefaultValue="(https:\/\/[^"]*)"/g).map((m) => m[1]);
  const faults = [...new Set(local)].flatMap((url) => {
    if (!url.startsWith(base)) return [`not under ${base}: ${url}`];
    return look(url.slice(base.length)) ? [] : [`no such file: ${url.slice(base.length)}`];
  });
  const resources = resourcesOf(xml);
  const icons = [
    ...all(xml, /<IconUrl DefaultValue="([^"]*)"/g).map((m) => [m[1], 32]),
    ...all(xml, /<HighResolutionIconUrl DefaultValue="([^"]*)"/g).map((m) => [m[1], 64]),
    ...all(xml, /<bt:Image size="(\d+)" resid="([^"]*)"/g).map((m) => [
      resources.get(m[2]) ?? '',
      Number(m[1]),
    ]),
  ];
  for (const [url, size] of icons) {
    const bytes = look(url.slice(base.length));
    if (bytes && pngSize(bytes)?.join() !== [size, size].join())
      faults.push(`not a PNG of ${size} by ${size}: ${url.slice(base.length)}`);
  }
  return [...new Set(faults)];
}

/**
 * The faults of a manifest, a sentence each.
 * @param look - gives the bytes of a file that the manifest names, by its name under the add-in's address.
 */
function manifestFaults(xml, look) {
  const bare = xml.replace(/<!--[\s\S]*?-->/g, '');
  return [identity, addresses, references, texts, onePage, requirements]
    .flatMap((rule) => rule(bare))
    .concat(files(bare, look));
}

module.exports = { inBuild, inSources, manifestFaults };
