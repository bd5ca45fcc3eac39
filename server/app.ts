/** The HTTP service as a function from request to response: no port, no process, no clock. */
import { serveStatic } from '@hono/node-server/serve-static';
import { type Context, Hono } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import packageFile from './package.json' with { type: 'json' };
import { StoreFullError } from './store/store.ts';

export interface AppOptions {
  /** Adds the addresses of the records. Without it the service only gives out the web app. */
  readonly addRecords?: (app: Hono) => void;
  /** Folder of the built web app. Without it only `/api` is answered. */
  readonly webFolder?: string;
}

const SELF = ["'self'"];
const NOTHING = ["'none'"];

/**
 * Nothing from elsewhere, no inline script, no inline style. React sets `style` through the DOM,
 * which this policy allows. `data:` and `blob:` images are the drawings a person downloads.
 */
const contentSecurityPolicy = {
  defaultSrc: NOTHING,
  scriptSrc: SELF,
  styleSrc: SELF,
  fontSrc: SELF,
  imgSrc: [...SELF, 'data:', 'blob:'],
  connectSrc: SELF,
  workerSrc: SELF,
  manifestSrc: SELF,
  baseUri: NOTHING,
  formAction: SELF,
  frameAncestors: NOTHING,
};

/** Vite puts a hash of the content into the names of the files in this folder. */
const HASHED_FILES = '/assets/';

export function createApp({ webFolder, addRecords }: AppOptions): Hono {
  const app = new Hono();

  app.use(
    secureHeaders({
      contentSecurityPolicy,
      referrerPolicy: 'no-referrer',
      xFrameOptions: 'DENY',
      // The service itself speaks plain HTTP to its own machine; a proxy in front decides on HTTPS.
      strictTransportSecurity: false,
    }),
  );

  app.get('/api/health', (c) => {
    c.header('Cache-Control', 'no-store');
    return c.json({ name: 'fallwright', status: 'ok', version: packageFile.version });
  });
  addRecords?.(app);
  app.all('/api/*', (c) =>
    c.json({ problem: `There is nothing at ${c.req.method} ${c.req.path}.` }, 404),
  );

  if (webFolder !== undefined) {
    // A name that begins with a dot is a note of the build, not a page.
    app.use(async (c, next) => (/\/\./.test(c.req.path) ? notFound(c) : next()));
    app.use(serveStatic({ root: webFolder, onFound: (_path, c) => setCaching(c) }));
    // The app has its own addresses (a site, a ram): each of them is the same page.
    const page = serveStatic({
      root: webFolder,
      path: 'index.html',
      onFound: (_p, c) => setCaching(c),
    });
    app.use(async (c, next) => (looksLikeFile(c.req.path) ? next() : page(c, next)));
  }

  app.notFound(notFound);
  app.onError(failed);
  return app;
}

function setCaching(c: Context): void {
  const neverChanges = c.req.path.startsWith(HASHED_FILES);
  c.header('Cache-Control', neverChanges ? 'public, max-age=31536000, immutable' : 'no-cache');
}

function looksLikeFile(path: string): boolean {
  return path.startsWith(HASHED_FILES) || /\.[a-z0-9]+$/i.test(path);
}

function notFound(c: Context): Response {
  return c.text(`There is nothing at ${c.req.path}.\n`, 404);
}

/** A request that cannot be read is the sender's; what is left is ours, and is told without what was in the request. */
function failed(error: Error, c: Context): Response {
  if (error instanceof HTTPException) return c.json({ problem: error.message }, error.status);
  if (error instanceof StoreFullError) return c.json({ problem: error.message }, 507);
  console.error(`${c.req.method} ${new URL(c.req.url).pathname}: ${error.name}: ${error.message}`);
  return c.json({ problem: 'The service made a mistake of its own. Nothing is half done.' }, 500);
}
