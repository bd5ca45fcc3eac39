import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** Tests in which the width of the screen plays no part run at the desk only. */
const ANY_WIDTH = { tag: '@any-width' };

let place: FirstPage;

test.beforeEach(async ({ page }) => {
  place = new FirstPage(page);
  await place.open();
});

test.afterEach(() => {
  expect(place.complaints).toEqual([]);
});

test(
  'opens a place of the demo, marked as such and answered at once',
  ANY_WIDTH,
  async ({ page }) => {
    await expect(page.getByRole('textbox', { name: 'Name of this place' })).toHaveValue(
      'Larkrise spring',
    );
    await expect(page.getByText('Demo', { exact: true })).toBeVisible();
    await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
    await expect(place.answer.getByText('litres a day at the tank')).toBeVisible();
    await place.settled();
    await expect(page.getByRole('heading', { name: 'What would change it' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Taken for granted' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Cautions' })).toBeVisible();
    await expect(page.getByText(/A prediction, not a promise/).first()).toBeVisible();
  },
);

test('the drawing says in words what it shows, and its parts lead to their fields', async ({
  page,
}) => {
  const drawing = page.getByRole('group', { name: /Larkrise spring in elevation: the drive line/ });
  await expect(drawing).toBeVisible();
  await expect(drawing).toHaveAccessibleDescription(/stands\s1\.9\s±\s0\.1\sm\sabove\sthe\sram/);
  const figure = page.getByRole('figure', { name: 'The place in elevation' });
  const parts = figure.getByRole('link');
  await expect(parts).toHaveCount(5);
  await expect(parts.first()).toHaveAccessibleName(/^source, 14/);
  await expect(parts.last()).toHaveAccessibleName(/^tank/);
  await figure.getByRole('link', { name: /^DN20\sram/ }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await expect(place.box('Typical ram')).toBeFocused();
});

test(
  'a quantity is read as people write it, and said back in the reader’s units',
  ANY_WIDTH,
  async ({ page }) => {
    const fall = place.box('Fall');
    await fall.fill('6 ft 3 in');
    await expect(fall).toHaveAccessibleDescription(/1\.91\sm\s\(measured\)/);
    await page.getByRole('radio', { name: 'US' }).check();
    await expect(fall).toHaveAccessibleDescription(/6\.25\sft/);
    await expect(fall).toHaveValue('6 ft 3 in');
    await expect(place.answer.getByText('gallons a day at the tank')).toBeVisible();
  },
);

test('the answer follows what is typed', ANY_WIDTH, async () => {
  const great = place.answer.getByText('litres a day at the tank').locator('xpath=..');
  const before = await great.textContent();
  await place.box('Lift').fill('14 m');
  await expect(great).not.toHaveText(before ?? '');
  await place.box('Fall').fill('0.3 m');
  await expect(place.answer.getByRole('heading', { name: 'Stays open' })).toBeVisible();
});

test(
  'a value that cannot be read is kept as typed, told on leaving, and leaves the answer',
  ANY_WIDTH,
  async ({ page }) => {
    const fall = place.box('Fall');
    await fall.fill('12');
    await expect(fall).toHaveAttribute('aria-invalid', 'false');
    await fall.press('Tab');
    await expect(fall).toHaveAttribute('aria-invalid', 'true');
    await expect(fall).toHaveAccessibleDescription(/12\swhat\?\sWrite\sthe\sunit:\s12\sm/);
    await expect(fall).toHaveAccessibleDescription(/still\sstands\son\s1\.9\sm\s±\s0\.1\sm/);
    await expect(fall).toHaveValue('12');
    await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();

    await page.reload();
    await expect(place.box('Fall')).toHaveValue('12');
    await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();

    await place.box('Fall').fill('1.8 m');
    await expect(place.box('Fall')).toHaveAttribute('aria-invalid', 'false');
  },
);

test(
  'what cannot be true together is said beside the field, over an answer that looks old',
  ANY_WIDTH,
  async () => {
    await place.box('Lift').fill('1.2 m');
    await place.box('Lift').press('Tab');
    await expect(place.box('Lift')).toHaveAccessibleDescription(
      /The\slift\sis\s1\.2\sm\sbut\sthe\sfall\sis\s1\.9\sm/,
    );
    await expect(place.answer.getByText('Before the lift was changed')).toBeVisible();
    await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
  },
);

test('a fall that cannot be is explained and loses nothing', ANY_WIDTH, async () => {
  const fall = place.box('Fall');
  for (const nonsense of ['0 m', '-3 m', '1e30 m', 'abc', '12 gpm', '1.9 m ± m', 'x'.repeat(400)]) {
    await fall.fill(nonsense);
    await fall.press('Tab');
    await expect(fall).toHaveAttribute('aria-invalid', 'true');
    await expect(fall).toHaveAccessibleDescription(/\w{3}/);
    await expect(fall).toHaveValue(nonsense);
    await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
    await fall.fill('1.9 m');
    await expect(fall).not.toHaveAttribute('aria-invalid', 'true');
  }
});

test('from nothing to an answer by keyboard alone', ANY_WIDTH, async ({ page }) => {
  await place.beginEmpty();
  await expect(place.box('Water it gives')).toBeFocused();
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toHaveCount(0);
  await page.keyboard.type('12 L/min');
  await place.answer.getByRole('link', { name: /the fall/ }).focus();
  await page.keyboard.press('Enter');
  await expect(place.box('Fall')).toBeFocused();
  await page.keyboard.type('6 ft');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(place.box('Pipe', 'Drive line')).toBeFocused();
  await page.keyboard.type('steel sch 40 1 in');
  await place.box('Length', 'Drive line').focus();
  await page.keyboard.type('40 ft');
  await place.box('Lift').focus();
  await page.keyboard.type('30 ft');
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
  await expect(place.spoken().first()).toContainText(/litres a day/);
  await page.getByRole('textbox', { name: 'Name of this place' }).fill('Tarn Hollow, lower spring');
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Name of this place' })).toHaveValue(
    'Tarn Hollow, lower spring',
  );
  await expect(place.box('Lift')).toHaveValue('30 ft');
});

test(
  'an empty place is one more in the list; the one before stays',
  ANY_WIDTH,
  async ({ page }) => {
    await place.beginEmpty();
    await page.goBack();
    await expect(page.getByRole('textbox', { name: 'Name of this place' })).toHaveValue(
      'Larkrise spring',
    );
    await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
  },
);

test('every number carries where it comes from', ANY_WIDTH, async () => {
  const lift = place.box('Lift');
  await expect(lift).toHaveAccessibleDescription(/measured/);
  const part = place.part('Delivery line');
  await part.getByRole('button', { name: /^Lift: measured/ }).click();
  await part.getByRole('radio', { name: 'assumed' }).check();
  await expect(lift).toHaveAccessibleDescription(/assumed/);
  await expect(part.getByRole('button', { name: /^Lift: assumed/ })).toBeVisible();
});

test('a pipe is chosen by name, told its bore, and can be spelled out', ANY_WIDTH, async () => {
  const drive = place.part('Drive line');
  await expect(place.box('Pipe', 'Drive line')).toHaveAccessibleDescription(/bore\s20\.4\smm/);
  await place.box('Pipe', 'Drive line').fill('rubber snake');
  await place.box('Length', 'Drive line').focus();
  await expect(place.box('Pipe', 'Drive line')).toHaveAccessibleDescription(
    /No pipe in the tables/,
  );
  await place.box('Pipe', 'Drive line').fill('PE100 SDR11 25');
  await drive.getByRole('button', { name: 'spell it out' }).click();
  await expect(place.box('Bore', 'Drive line')).toHaveValue('20.4 mm');
  await expect(place.box('Material', 'Drive line')).toHaveValue('PE100');
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
  await place.box('Bore', 'Drive line').fill('9 mm');
  await expect(place.answer.getByRole('heading', { name: 'Stays open' })).toBeVisible();
});

test('the parts of a ram can be put in place of the usual ones', ANY_WIDTH, async () => {
  await expect(place.box('Stroke')).toHaveValue('');
  await expect(place.box('Stroke')).toHaveAccessibleDescription(/mm \(assumed\)/);
  await place.box('Typical ram').selectOption({ label: 'DN15, 1/2 in' });
  await place.box('Stroke').fill('1.6 mm');
  await expect(place.box('Stroke')).toHaveAccessibleDescription(/1\.6\smm\s\(stated\)/);
  await expect(place.box('Typical ram')).toHaveValue('DN15');
});

test('a file is saved, and opens again as the same place', ANY_WIDTH, async ({ page }) => {
  await place.box('Lift').fill('15 m');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const file = await (await download).path();
  const text = await readFile(file, 'utf8');
  expect(text).toContain('fallwright: site@1');
  expect(text).toContain('15 m');
  expect((await download).suggestedFilename()).toBe('larkrise-spring.yaml');

  await place.beginEmpty();
  await page.locator('input[type=file]').setInputFiles(file);
  await expect(place.box('Lift')).toHaveValue('15 m');
  await expect(place.box('Fall')).toHaveValue('1.9 m ± 0.1 m');
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
});

test(
  'a place that lacks something is saved too, and opens with what it has',
  ANY_WIDTH,
  async ({ page }) => {
    await place.beginEmpty();
    await place.box('Fall').fill('2.5 m');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a file' }).click();
    const file = await (await download).path();
    await page.getByRole('button', { name: 'New place' }).click();
    await expect(place.box('Fall')).toHaveValue('');
    await page.locator('input[type=file]').setInputFiles(file);
    await expect(place.box('Fall')).toHaveValue('2.5 m');
    await expect(place.answer.getByRole('heading', { name: 'Not enough yet' })).toBeVisible();
  },
);

test(
  'a file that cannot be read is refused with its reasons and changes nothing',
  ANY_WIDTH,
  async ({ page }) => {
    for (const [name, content, reason] of [
      ['no-yaml.yaml', 'fallwright: site@1\nfall: [1.9 m\n', /Line \d+/],
      [
        'bare-number.yaml',
        'fallwright: site@1\nsource: { flow: 14 L/min }\nfall: 4\nlift: 12 m\ndrive: [{ pipe: PE100 SDR11 25, length: 14 m }]\n',
        /Line\s3:\s4\swhat\?/,
      ],
      ['picture.yaml', 'PNG\u0000\u0001\u0002', /not a text file/],
      ['newer.yaml', 'fallwright: site@9\n', /newer/],
    ] as const) {
      await page.locator('input[type=file]').setInputFiles({
        name,
        mimeType: 'application/yaml',
        buffer: Buffer.from(content),
      });
      await expect(page.getByText(`${name} was not opened.`)).toBeVisible();
      await expect(page.getByRole('listitem').filter({ hasText: reason }).first()).toBeVisible();
      await expect(place.box('Fall')).toHaveValue('1.9 m ± 0.1 m');
      await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
    }
  },
);

test('readings and needs in a file are shown by what they come to', ANY_WIDTH, async ({ page }) => {
  const example = (name: string) => join(import.meta.dirname, '..', '..', 'examples', name);
  const chooser = page.locator('input[type=file]');
  await chooser.setInputFiles(example('alder-rake.yaml'));
  await expect(place.box('Name of this place')).toHaveValue('Alder Rake');
  await expect(place.box('Fall')).toHaveAccessibleDescription(
    /2\.069\s±\s0\.003\sm \(measured\).*level book of 5 points/,
  );
  await expect(place.box('Water it gives')).toHaveAccessibleDescription(
    /22\.37\s±\s0\.47\sL\/min \(measured\) 2 measurements together/,
  );
  await expect(place.part('Source').getByText(/The ram is counted on 16\.8\sL\/min/)).toBeVisible();
  await expect(place.part('Measured').getByRole('listitem').first()).toBeVisible();
  await place.answer.getByText(/^Likely [\d,]+ to [\d,]+ litres a day/).click();
  await expect(place.answer.getByText(/It runs in .* tries/)).toBeVisible();
  await chooser.setInputFiles(example('bracken-fold.yaml'));
  await expect(place.box('Name of this place')).toHaveValue('Bracken Fold');
  await expect(place.part('Tank').getByText(/1,210\sL\sa\sday.*from the needs/)).toBeVisible();
  await expect(
    place.part('Need and tank').getByText(/It is enough from October to April/),
  ).toBeVisible();
});

test('what the page does not ask for stays in the file', ANY_WIDTH, async ({ page }) => {
  await page.locator('input[type=file]').setInputFiles({
    name: 'tarn.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(
      [
        'fallwright: site@1',
        'name: Tarn',
        'notes: ask at the mill',
        'source: { flow: 20 L/min }',
        'fall: 3 m',
        'drive:',
        '  - { pipe: steel sch 40 1 in, length: 6 m }',
        '  - { pipe: steel sch 40 1 in, length: 8 m, air: 10 mL at 2 m }',
        'ram: { typical: DN25, airVessel: { volume: 2 L, index: 1.3 } }',
        'lift: 20 m',
        'delivery:',
        '  pipe: PE100 SDR11 25',
        '  length: 120 m',
        '  profile: [{ at: 60 m, height: 14 m }, { at: 70 m, height: 11 m }]',
      ].join('\n'),
    ),
  });
  await expect(place.box('Name of this place')).toHaveValue('Tarn');
  await expect(page.getByText('crest at 60 m')).toBeVisible();
  await expect(page.getByText(/10\smL\sof\sair\sat\s8\sm/).first()).toBeVisible();
  await expect(place.part('Ram').getByText(/airVessel.index/)).toBeVisible();
  await place.box('Fall').fill('3.2 m');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const text = await readFile(await (await download).path(), 'utf8');
  for (const kept of ['ask at the mill', '10 mL at 2 m', 'volume: 2 L', 'height: 14 m', '3.2 m']) {
    expect(text).toContain(kept.replace('10 mL at 2 m', '10 mL'));
  }
});

test('a second pipe can be laid below the first and taken out again', ANY_WIDTH, async () => {
  const drive = place.part('Drive line');
  await drive.getByRole('button', { name: 'Add another pipe below it' }).click();
  // A pipe of which nothing is known yet does not disturb the answer.
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
  const second = drive.getByRole('group', { name: 'pipe 2 of 2' });
  await second.getByRole('combobox', { name: 'Pipe' }).fill('garden hose 1/2 in');
  await second.getByRole('textbox', { name: 'Length' }).fill('30 m');
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toHaveCount(0);
  await second.getByRole('button', { name: 'Take out pipe 2' }).click();
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
});

test('a spring box keeps the water that was measured', ANY_WIDTH, async () => {
  await place.box('Drawn from').selectOption('spring box');
  await expect(place.box('Water that runs in')).toHaveValue('14 L/min ± 0.5 L/min');
  await place.box('What the spring box holds').fill('200 L');
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
});

test('paper or night is chosen with a touch and kept', async ({ page }) => {
  const root = page.locator('html');
  await page.getByRole('radio', { name: 'night' }).check();
  await expect(root).toHaveAttribute('data-theme', 'night');
  await page.reload();
  await expect(root).toHaveAttribute('data-theme', 'night');
  await page.getByRole('radio', { name: 'paper' }).check();
  await expect(root).toHaveAttribute('data-theme', 'paper');
});

test('while the answer is out of sight one line at the foot of the screen tells it', async ({
  page,
}) => {
  await place.settled();
  await place.box('Water needed').scrollIntoViewIfNeeded();
  await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
  const strip = page.getByRole('complementary', { name: 'The answer in one line' });
  await expect(strip).toContainText(/Runs.*L\sa\sday/);
  await strip.getByRole('link').click();
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeInViewport();
});

test('nothing is wider than the screen', async ({ page }) => {
  await place.settled();
  const [wide, screen] = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    window.innerWidth,
  ]);
  expect(wide).toBeLessThanOrEqual(screen ?? 0);
});
