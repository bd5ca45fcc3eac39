/**
 * Draws the icons of the installed app from web/public/icon.svg: `node scripts/draw-icons.mjs`, after the drawing was changed.
 * The pictures are kept in the repository, so that a build needs no browser.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { CHROMIUM_FLAGS, CHROMIUM_HELP, findChromium } from './find-chromium.mjs';
import { ROOT, stop } from './install.mjs';

const FOLDER = join(ROOT, 'web', 'public');

/**
 * A maskable icon may be cut to a circle of 80 % of its width (W3C, Web Application Manifest, "safe zone"). The
 * drawing reaches 0.53 of its width from the middle, so it shrinks to three quarters; the ground fills the rest.
 */
const ICONS = [
  { name: 'icon-192.png', size: 192, share: 1 },
  { name: 'icon-512.png', size: 512, share: 1 },
  { name: 'icon-maskable-512.png', size: 512, share: 0.75 },
];
/** The paper of the page, as in tokens.css. */
const GROUND = '#eff2e6';

const executablePath = findChromium() ?? stop(`The icons are drawn by Chromium. ${CHROMIUM_HELP}`);
const drawing = Buffer.from(readFileSync(join(FOLDER, 'icon.svg'))).toString('base64');
const browser = await chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
try {
  for (const { name, size, share } of ICONS) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const side = Math.round(size * share);
    await page.setContent(
      `<body style="margin:0;height:100vh;display:grid;place-items:center;background:${GROUND}">
       <img width="${side}" height="${side}" src="data:image/svg+xml;base64,${drawing}">`,
    );
    await page.evaluate('document.images[0].decode()');
    writeFileSync(join(FOLDER, name), await page.screenshot());
    await page.close();
    console.log(name);
  }
} finally {
  await browser.close();
}
