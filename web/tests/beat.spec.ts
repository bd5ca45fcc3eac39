/** The beat, slowed down, as a person looks at it: by mouse, by finger, by keyboard and by ear. */
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** Tests in which the width of the screen plays no part run at the desk only. */
const ANY_WIDTH = { tag: '@any-width' };

class Beat {
  readonly page: Page;
  readonly screen: Locator;
  readonly time: Locator;
  readonly traces: Locator;
  readonly place: FirstPage;

  constructor(page: Page) {
    this.page = page;
    this.place = new FirstPage(page);
    this.screen = page.getByRole('region', { name: 'The beat, slowed down' });
    this.time = this.screen.getByRole('slider', { name: 'Time in the film' });
    this.traces = this.screen.getByRole('img', { name: /Head at the ram, flows and opening/ });
  }

  async open(): Promise<void> {
    await this.place.open();
    await this.turnTo();
    await expect(this.traces).toBeVisible();
  }

  /** To the leaf of the beat, from another one of the place. */
  async turnTo(): Promise<void> {
    await this.page.getByRole('link', { name: 'Beat', exact: true }).click();
  }

  button(name: string): Locator {
    return this.screen.getByRole('button', { name });
  }

  /** The value in its fixed place. */
  value(name: string): Locator {
    return this.screen
      .getByRole('definition')
      .and(this.screen.locator(`dt:text-is("${name}") + dd`));
  }

  async frame(): Promise<number> {
    return Number(await this.time.inputValue());
  }

  /** Seconds that the traces show, read from their name. */
  async shown(): Promise<number> {
    const name = (await this.traces.getAttribute('aria-label')) ?? '';
    const [, from, to] = /from ([\d.]+) to ([\d.]+) seconds/.exec(name) ?? [];
    return Number(to) - Number(from);
  }
}

let beat: Beat;

test.describe('standing still, as reduced motion asks', () => {
  test.beforeEach(async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    beat = new Beat(page);
    await beat.open();
  });

  test.afterEach(() => {
    expect(beat.place.complaints).toEqual([]);
  });

  test('stands where the ram delivers, and says what the picture shows', async ({ page }) => {
    await expect(beat.button('Play')).toBeVisible();
    const before = await beat.frame();
    await page.waitForTimeout(300);
    expect(await beat.frame()).toBe(before);
    await expect(beat.value('waste valve')).toHaveText('shut');
    await expect(beat.time).toHaveAttribute('aria-valuetext', /seconds|s, delivers/);
    const section = beat.screen.getByRole('img', { name: /ram in section/ });
    await expect(section).toHaveAccessibleDescription(/the ram delivers\. The waste valve is shut/);
    await expect(beat.traces).toHaveAccessibleDescription(/The head at the ram is/);
  });

  test('scrubbing moves picture, values and words to one moment', ANY_WIDTH, async () => {
    await beat.time.fill('0');
    await expect(beat.value('time')).toHaveText('0.0000 s');
    await expect(beat.screen.getByText(/^At 0\.0000\ss/)).toBeVisible();
    await beat.time.fill('200');
    const time = (await beat.value('time').textContent()) ?? '';
    await expect(beat.screen.getByText(`At ${time}`)).toBeVisible();
    await expect(beat.value('waste valve')).toHaveText(/mm$/);
    await expect(beat.screen.getByText(/The waste valve is wide open/)).toBeVisible();
  });

  test('steps one frame at a time, by button and by arrow', ANY_WIDTH, async ({ page }) => {
    const start = await beat.frame();
    await beat.button('One frame on').click();
    expect(await beat.frame()).toBe(start + 1);
    await page.keyboard.press('ArrowRight');
    expect(await beat.frame()).toBe(start + 2);
    await page.keyboard.press('Shift+ArrowLeft');
    expect(await beat.frame()).toBe(start - 8);
    await beat.button('One frame back').click();
    expect(await beat.frame()).toBe(start - 9);
  });

  test('zooms by button, key and drag; 0 goes back', ANY_WIDTH, async ({ page }) => {
    const whole = await beat.shown();
    await beat.button('Zoom in').click();
    await expect.poll(() => beat.shown()).toBeCloseTo(whole / 2, 2);
    await page.keyboard.press('+');
    await expect.poll(() => beat.shown()).toBeCloseTo(whole / 4, 2);
    await page.keyboard.press('-');
    await expect.poll(() => beat.shown()).toBeCloseTo(whole / 2, 2);
    await page.keyboard.press('0');
    await expect.poll(() => beat.shown()).toBe(whole);
    await beat.button('Zoom to the shut valve').click();
    expect(await beat.shown()).toBeLessThan(whole / 2);
    await beat.button('0: show the whole film').click();
    await expect.poll(() => beat.shown()).toBe(whole);

    await beat.traces.scrollIntoViewIfNeeded();
    const box = (await beat.traces.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    const y = box.y + 100;
    await page.mouse.move(box.x + box.width * 0.4, y);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.5, y);
    await page.mouse.move(box.x + box.width * 0.6, y);
    await page.mouse.up();
    const dragged = await beat.shown();
    expect(dragged).toBeGreaterThan(whole * 0.15);
    expect(dragged).toBeLessThan(whole * 0.3);
  });

  test(
    'a click on the traces sets the cursor, and then the wheel zooms',
    ANY_WIDTH,
    async ({ page }) => {
      const whole = await beat.shown();
      await beat.traces.hover({ position: { x: 300, y: 100 } });
      await page.mouse.wheel(0, -300);
      expect(await beat.shown()).toBe(whole);
      await beat.traces.click({ position: { x: 300, y: 100 } });
      await expect(beat.time).toBeFocused();
      await page.mouse.wheel(0, -300);
      await expect.poll(() => beat.shown()).toBeLessThan(whole * 0.6);
    },
  );

  test('a finger moves the cursor and two fingers zoom', async ({ page, hasTouch }) => {
    test.skip(!hasTouch, 'a mouse has one finger');
    await beat.traces.scrollIntoViewIfNeeded();
    const box = (await beat.traces.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    const hand = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...shares: number[]) =>
      hand.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: shares.map((share, id) => ({
          x: box.x + share * box.width,
          y: box.y + 60,
          id,
        })),
      });
    const whole = await beat.shown();
    await touch('touchStart', 0.4);
    await touch('touchMove', 0.6);
    await touch('touchEnd');
    await expect
      .poll(async () => (await beat.frame()) / Number(await beat.time.getAttribute('max')))
      .toBeCloseTo(0.56, 1);
    await touch('touchStart', 0.45, 0.55);
    await touch('touchMove', 0.3, 0.7);
    await touch('touchEnd');
    await expect.poll(() => beat.shown()).toBeLessThan(whole / 3);
    expect(await beat.shown()).toBeGreaterThan(whole / 6);
  });

  test('keys do nothing while the focus is elsewhere', ANY_WIDTH, async ({ page }) => {
    const whole = await beat.shown();
    const frame = await beat.frame();
    await page.getByRole('radio', { name: 'metric' }).focus();
    await page.keyboard.press('+');
    await page.keyboard.press(' ');
    expect(await beat.shown()).toBe(whole);
    expect(await beat.frame()).toBe(frame);
    await expect(beat.button('Play')).toBeVisible();
  });

  test('three beats are three times as long', ANY_WIDTH, async () => {
    const one = await beat.shown();
    await beat.screen.getByRole('radio', { name: '3 beats' }).check();
    await expect.poll(() => beat.shown()).toBeGreaterThan(2.7 * one);
    expect(await beat.shown()).toBeLessThan(3.3 * one);
  });

  test('feet and gallons at a touch', ANY_WIDTH, async ({ page }) => {
    await expect(beat.value('head at the ram')).toHaveText(/\sm$/);
    await page.getByRole('radio', { name: 'US' }).check();
    await expect(beat.value('head at the ram')).toHaveText(/\sft$/);
    await expect(beat.value('drive line')).toHaveText(/\sgpm$/);
    await expect(beat.screen.getByText('Head at the ram, ft')).toBeVisible();
  });

  test('the film is saved as CSV, in SI, a row a frame', ANY_WIDTH, async ({ page }) => {
    const download = page.waitForEvent('download');
    await beat.button('Save the film as CSV').click();
    const file = await download;
    expect(file.suggestedFilename()).toBe('beat-dn20.csv');
    const [heads, ...rows] = (await readFile(await file.path(), 'utf8')).trimEnd().split('\r\n');
    expect(heads).toMatch(/^time \[s\],waste valve opening \[m\],head at the ram \[m\],/);
    const frames = Number(await beat.time.getAttribute('max')) + 1;
    expect(rows).toHaveLength(frames);
    const columns = heads?.split(',').length;
    for (const row of rows) expect(row.split(',')).toHaveLength(columns ?? 0);
  });

  test('nothing sticks out at the side, and no letter is under 11 px', async ({ page }) => {
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBe(0);
    const smallest = await beat.screen.evaluate((screen) => {
      const sizes = [...screen.querySelectorAll('text, tspan, p, dt, dd, li, button, label')].map(
        (element) => {
          const size = Number.parseFloat(getComputedStyle(element).fontSize);
          const svg = element instanceof SVGElement ? element.ownerSVGElement : null;
          const scale = svg === null ? 1 : svg.clientWidth / svg.viewBox.baseVal.width;
          return size * scale;
        },
      );
      return Math.min(...sizes);
    });
    expect(smallest).toBeGreaterThanOrEqual(11);
  });

  test('no barrier that a machine can find', async () => {
    await beat.button('Zoom to the shut valve').click();
    await beat.place.expectNoAxeViolations();
  });
});

test('plays, pauses, and its speed is the one that was chosen', ANY_WIDTH, async ({ page }) => {
  beat = new Beat(page);
  await beat.open();
  await expect(beat.button('Pause')).toBeVisible();
  const start = await beat.frame();
  await expect.poll(() => beat.frame()).not.toBe(start);
  await beat.button('Pause').click();
  const stood = await beat.frame();
  await page.waitForTimeout(200);
  expect(await beat.frame()).toBe(stood);

  await beat.time.fill('0');
  await beat.screen.getByRole('radio', { name: '1/100' }).check();
  await beat.button('Play').click();
  await page.waitForTimeout(1000);
  await beat.button('Pause').click();
  const seconds = Number.parseFloat((await beat.value('time').textContent()) ?? '');
  // A second at a hundredth is 10 ms; a slow machine may take two.
  expect(seconds).toBeGreaterThan(0.004);
  expect(seconds).toBeLessThan(0.03);
  expect(beat.place.complaints).toEqual([]);
});

test('the space bar plays and pauses', ANY_WIDTH, async ({ page }) => {
  beat = new Beat(page);
  await beat.open();
  await beat.time.focus();
  await page.keyboard.press(' ');
  await expect(beat.button('Play')).toBeVisible();
  await page.keyboard.press(' ');
  await expect(beat.button('Pause')).toBeVisible();
});

test(
  'a ram that does not beat says so, and the two seconds after the push are shown',
  ANY_WIDTH,
  async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    beat = new Beat(page);
    await beat.place.open();
    await beat.place.box('Fall').fill('0.3 m');
    await beat.turnTo();
    await expect(
      beat.screen.getByText(/This ram does not beat\. Its waste valve stays open/),
    ).toBeVisible();
    expect(await beat.shown()).toBeCloseTo(2, 1);
    await expect(beat.button('Zoom to the shut valve')).toHaveCount(0);
    await beat.place.expectNoAxeViolations();
  },
);
