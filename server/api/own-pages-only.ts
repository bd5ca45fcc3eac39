/**
 * Keeps the records from pages of other places.
 *
 * The service listens on this machine alone, but any page that a browser here has open can send requests to this machine.
 * A page under another name (which may lead here by a changed name server) has that name as `Host`; a page from another
 * place has that place as `Origin`. A program that is no browser sends no `Origin`, and may ask.
 */
import type { MiddlewareHandler } from 'hono';

const OUR_HOST = /^(?:127\.0\.0\.1|localhost|\[::1\])(?::\d+)?$/i;

export const ownPagesOnly: MiddlewareHandler = async (c, next) => {
  const host = c.req.header('host') ?? '';
  const origin = c.req.header('origin');
  if (!OUR_HOST.test(host)) {
    const problem = `These records are given out on this machine alone, not as ${host.slice(0, 100)}.`;
    return c.json({ problem }, 403);
  }
  const isOther = origin !== undefined && !/^https?:\/\//.test(origin);
  if (isOther || (origin !== undefined && origin.replace(/^https?:\/\//, '') !== host)) {
    return c.json({ problem: 'A page from another place may not ask for these records.' }, 403);
  }
  return next();
};
