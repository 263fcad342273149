const serve = require('./serve.cjs');

/** Whether what answers at an address is this page, of this or of another copy. */
async function isOurs(url) {
  try {
    const answer = await fetch(url, {
      method: 'HEAD',
      redirect: 'manual',
      signal: AbortSignal.timeout(2_000),
    });
    return answer.headers.get('server') === serve.NAME;
  } catch {
    return false;
  }
}

const taken = (url, port) =>
  `Another program uses port ${port}, so Sweeptable was not started. Your browser keeps your workbook for ${url} alone:
end that program and start again to find it, or work elsewhere on one of its own: npm start -- --port ${port + 1}`;

/**
 * Serves the page at the one address that the browser keeps its workbook for. Where the page is served there already it says
 * so, and gives the same address with nothing to close; where another program is, it throws with what to do.
 */
module.exports = async function serveHere(folder, port) {
  const url = serve.address(port);
  try {
    return { ...(await serve(folder, port)), isNew: true };
  } catch (error) {
    if (error.code !== 'EADDRINUSE') throw error;
    if (!(await isOurs(url))) throw new Error(taken(url, port), { cause: error });
    return { url, isNew: false, close: () => Promise.resolve() };
  }
};
