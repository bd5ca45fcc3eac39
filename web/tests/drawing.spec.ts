/** The picture of the place changed by hand: by mouse, by keys, in the table, and with a long survey. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** Handles and boxes are the same at every width; a mouse is for the desk. */
const DESK = { tag: '@any-width' };

const SURVEYED = `fallwright: site@1
name: Swallow Gate
source: { flow: 40 L/min }
fall: 2.4 m
drive:
  - pipe: galvanised steel DN25
    length: 12 m
    laid: over a crest
    profile: [ { at: 3 m, height: 1.40 m }, { at: 180 in, height: { value: 1.6 m, origin: measured } } ]
ram: DN25
lift: 15 m
delivery: { pipe: PE100 SDR11 20, length: 110 m }
`;

/** A survey of a long hill: it rises 28 m over 900 m, with humps. */
function longSurvey(count: number): string {
  const points = Array.from({ length: count }, (_, i) => {
    const at = ((i + 1) * 900) / (count + 1);
    const height = (28 * at) / 900 + 1.6 * Math.sin(at / 37) + 0.8 * Math.sin(at / 11);
    return `      - { at: ${at.toFixed(2)} m, height: ${height.toFixed(2)} m }`;
  });
  return `fallwright: site@1
name: Long Rigg
source: { flow: 60 L/min }
fall: 3 m
drive: { pipe: galvanised steel DN32, length: 18 m }
ram: DN32
lift: 28 m
delivery:
  - pipe: PE100 SDR11 25
    length: 900 m
    profile:
${points.join('\n')}
`;
}

async function openFile(page: Page, text: string): Promise<FirstPage> {
  const place = new FirstPage(page);
  await place.open();
  await page.locator('input[type=file]').setInputFiles({
    name: 'place.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(text),
  });
  await expect(page.getByText(/^Profile, \d+ points$/)).toBeVisible();
  await expect(place.answer.getByRole('heading', { name: /^(Runs|Starves|Does)/ })).toBeVisible();
  return place;
}

const middleOf = async (handle: Locator): Promise<{ x: number; y: number }> => {
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (box === null) throw new Error('the handle is not drawn');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

test(
  'a point is dragged, taken back, moved by keys, typed and taken out',
  DESK,
  async ({ page }) => {
    const place = await openFile(page, SURVEYED);
    const drive = place.part('Drive line');
    const height = drive.getByRole('textbox', { name: 'Point 1, height' });
    const along = drive.getByRole('textbox', { name: 'Point 1, along the pipe' });
    const crest = drive.getByRole('textbox', { name: 'Point 2, height' });
    const handle = page.getByRole('slider', { name: 'Drive line point 1 of 2' });
    await expect(height).toHaveValue('1.40 m');
    await expect(drive.getByRole('row', { name: /crest with .* of air/ })).toBeVisible();
    await expect(page.getByText(/of air assumed at 4\.57\sm/)).toBeVisible();

    // By the mouse: the drawing and the table follow while it moves, and it is one step back.
    const from = await middleOf(handle);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 10, from.y + 6, { steps: 3 });
    await page.mouse.move(from.x + 20, from.y + 12, { steps: 3 });
    await expect(handle).toHaveAttribute('aria-valuetext', /^3\.\d+\sm along, 1\.\d+\sm high/);
    // Nothing is kept before it lets go.
    await expect(height).toHaveValue('1.40 m');
    await page.mouse.up();
    await expect(height).not.toHaveValue('1.40 m');
    const dragged = Number.parseFloat(await height.inputValue());
    expect(dragged).toBeGreaterThan(0.9);
    expect(dragged).toBeLessThan(1.4);
    const to = await middleOf(handle);
    expect(Math.abs(to.x - from.x - 20)).toBeLessThan(8);
    // The point beside it keeps what was written for it, in its own unit.
    await expect(drive.getByRole('textbox', { name: 'Point 2, along the pipe' })).toHaveValue(
      '180 in',
    );
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(height).toHaveValue('1.40 m');
    await expect(along).toHaveValue('3 m');

    // By keys, from the handle.
    await handle.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowRight');
    await expect(height).toHaveValue('1.5 m');
    await expect(along).toHaveValue('3.1 m');
    await expect(handle).toHaveAttribute('aria-valuetext', /^3\.1\sm along, 1\.5\sm high/);
    await page.keyboard.press('Control+z');
    await expect(height).toHaveValue('1.40 m');

    // In the table: what cannot be read stays with its fault, what can moves the handle.
    await handle.focus();
    await page.keyboard.press('Enter');
    await expect(height).toBeFocused();
    await height.fill('1.2');
    await along.focus();
    await expect(drive.getByText(/1\.2 what\?|Write the unit/)).toBeVisible();
    await expect(height).toHaveAttribute('aria-invalid', 'true');
    await height.fill('1.2 m');
    await along.focus();
    await expect(height).toHaveAttribute('aria-invalid', 'false');
    await expect(handle).toHaveAttribute('aria-valuetext', /^3\sm along, 1\.2\sm high/);
    await along.fill('5 m');
    await crest.focus();
    await expect(drive.getByText(/must follow one another/)).toBeVisible();
    await drive.getByRole('button', { name: 'Put the points in order' }).click();
    await expect(drive.getByRole('textbox', { name: 'Point 2, along the pipe' })).toHaveValue(
      '5 m',
    );

    // Added and taken out.
    await page.getByRole('button', { name: 'Add a point to the drive line' }).click();
    await expect(page.getByRole('slider', { name: 'Drive line point 3 of 3' })).toBeFocused();
    await page.keyboard.press('Delete');
    await expect(page.getByRole('slider', { name: /Drive line point/ })).toHaveCount(2);

    // The level of the source, the pipe itself pulled, and the tank.
    await page.getByRole('slider', { name: /Level of the source/ }).focus();
    await page.keyboard.press('ArrowUp');
    await expect(place.box('Fall')).toHaveValue('2.45 m');
    const tank = await middleOf(page.getByRole('slider', { name: /Level of the tank/ }));
    await page.mouse.move(tank.x, tank.y);
    await page.mouse.down();
    await page.mouse.move(tank.x, tank.y + 30, { steps: 4 });
    await page.mouse.up();
    await expect(place.box('Lift')).toHaveValue(/^1[0-4](\.\d+)? m$/);
    const line = await page.locator('.pull').nth(1).boundingBox();
    if (line === null) throw new Error('the delivery line is not drawn');
    const half = { x: line.x + line.width / 2, y: line.y + line.height / 2 };
    await page.mouse.move(half.x, half.y);
    await page.mouse.down();
    await page.mouse.move(half.x, half.y + 24, { steps: 4 });
    await page.mouse.up();
    await expect(page.getByRole('slider', { name: 'Delivery line point 1 of 1' })).toBeFocused();
    expect(new URL(page.url()).hash).toBe('');

    await expect(place.answer.getByText('running again')).toHaveCount(0);
    await place.expectNoAxeViolations();
    expect(place.complaints).toEqual([]);
  },
);

test(
  'a survey of four hundred points stays quick, in the drawing and in its table',
  DESK,
  async ({ page }) => {
    const place = await openFile(page, longSurvey(400));
    const handles = page.locator('[id^="point-delivery-"]');
    expect(await handles.count()).toBeLessThanOrEqual(40);
    expect(await handles.count()).toBeGreaterThan(5);
    await page.getByText('Profile, 400 points').click();
    // By their place and not by their names: to look for a name among eight hundred boxes takes the test seconds.
    const height = (index: number): Locator =>
      page.locator(`#field-delivery-0-profile-${index}-height`);
    await expect(height(399)).toBeAttached();
    const box = height(199);
    await box.scrollIntoViewIfNeeded();
    const took = await timeOfKeys(page, box);
    console.log(`keys in a table of 400 points: ${took.map((ms) => ms.toFixed(0)).join(', ')} ms`);
    expect(took.toSorted((a, b) => a - b)[4]).toBeLessThan(50);
    await expect(box).toHaveValue('12.9 m');

    // A crest in the drawing is moved by a key, and its row follows.
    const first = handles.first();
    const index = Number((await first.getAttribute('id'))?.split('-').at(-1));
    const row = height(index);
    const before = Number.parseFloat(await row.inputValue());
    const now = async (): Promise<number> => Number.parseFloat(await row.inputValue());
    await first.focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(now).toBeCloseTo(before + 0.05);
    await page.keyboard.press('Control+z');
    await expect.poll(now).toBeCloseTo(before);
    expect(place.complaints).toEqual([]);
  },
);

test('a finger drags a point and the page stays where it is', async ({ page, isMobile }) => {
  test.skip(!isMobile, 'a finger is for the phone');
  await openFile(page, SURVEYED);
  const handle = page.getByRole('slider', { name: 'Drive line point 1 of 2' });
  const height = page.locator('#field-drive-0-profile-0-height');
  const from = await middleOf(handle);
  const scrolled = await page.evaluate(() => window.scrollY);
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dy = 0) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x: from.x, y: from.y + dy }],
    });
  await touch('touchStart');
  for (const dy of [4, 8, 12, 16]) await touch('touchMove', dy);
  await expect(height).toHaveValue('1.40 m');
  await touch('touchEnd');
  await expect(height).toHaveValue(/^(0\.\d+|1(\.[0-2]\d*)?) m$/);
  expect(await page.evaluate(() => window.scrollY)).toBe(scrolled);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(height).toHaveValue('1.40 m');
});

/**
 * Milliseconds of the main thread's own time that each of nine keystrokes takes: script, style and layout until the page is
 * drawn again. Its own time, because on a machine that is busy with other tests the clock tells of those too.
 */
async function timeOfKeys(page: Page, box: Locator): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const spent = async (): Promise<number> => {
    const { metrics } = await session.send('Performance.getMetrics');
    const parts = ['ScriptDuration', 'LayoutDuration', 'RecalcStyleDuration'];
    return metrics
      .filter(({ name }) => parts.includes(name))
      .reduce((sum, { value }) => sum + 1000 * value, 0);
  };
  await box.focus();
  // The element itself: to find it by its role anew would lay out the page, which is then counted too.
  const element = await box.elementHandle();
  if (element === null) throw new Error('the box is gone');
  const took: number[] = [];
  for (const typed of [
    '12 m',
    '13 m',
    '12.1 m',
    '12.2 m',
    '12.',
    '12.4 m',
    '12.5 m',
    '12.8 m',
    '12.9 m',
  ]) {
    const before = await spent();
    await element.evaluate((input, text) => {
      const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
      put?.call(input, text);
      input.dispatchEvent(new Event('input', { bubbles: true }));
      return new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    }, typed);
    took.push((await spent()) - before);
  }
  return took;
}
