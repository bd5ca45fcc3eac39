/**
 * `npm run bench`: how fast the engine is, against its targets and against the same step in C.
 *
 * Prints figures and ratios; asserts nothing, since a machine's speed is not the program's.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  answerFor,
  type ChoiceRequest,
  chooseHere,
  deliveryLossPerFlowSquared,
  findPipe,
  GRAVITY,
  type Installation,
  ITEM_UNITS,
  type ItemKind,
  openingForces,
  operatingPoint,
  passageInertance,
  type RamKernel,
  sampledAnswer,
  seatArea,
  startedKernel,
  startUp,
  type TypicalSize,
  typicalRam,
  wasteValveTransit,
  waterAt,
} from '@fallwright/engine';
import { installationOf, readSite, type Site, uncertaintiesOf } from '@fallwright/records';
import { Bench } from 'tinybench';

const HERE = dirname(fileURLToPath(import.meta.url));
const STEPS = 400_000;
const REPEATS = 7;
/** Substeps in the fall of the disc, as in engine/cycle/ram-kernel.ts. */
const SUBSTEPS = 20;

function example(): Site {
  const text = readFileSync(join(HERE, '../../examples/larkrise-spring.yaml'), 'utf8');
  const read = readSite(text);
  if (!read.ok) throw new Error('examples/larkrise-spring.yaml cannot be read');
  return read.site;
}

/** Times the kernel's step; gives nanoseconds a step, fastest of several runs, and the kernel at the end of the last. */
function timeStep(installation: Installation, reaches: number, vesselHead: number) {
  let best = Infinity;
  let kernel = startedKernel(installation, vesselHead, { reaches });
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    kernel = startedKernel(installation, vesselHead, { reaches });
    const from = performance.now();
    while (kernel.steps < STEPS) kernel.run(STEPS - kernel.steps);
    best = Math.min(best, ((performance.now() - from) * 1e6) / STEPS);
  }
  return { nanoseconds: best, kernel };
}

/** The numbers that step.c reads, in its order. */
function numbersFor(installation: Installation, kernel: RamKernel, vesselHead: number): string {
  const { grid } = kernel;
  const { ram, water, fall } = installation;
  const valve = ram.wasteValve;
  const { atOpen, atShut } = openingForces(valve);
  const seat = seatArea(valve);
  const snifter = ram.snifter
    ? 0.6 * (Math.PI / 4) * ram.snifter.diameter ** 2 * Math.sqrt(2 * GRAVITY)
    : 0;
  return [
    grid.reaches,
    STEPS,
    REPEATS,
    grid.timeStep,
    fall,
    grid.tableScale,
    ...grid.impedance,
    ...grid.tableOffset,
    grid.tables.length,
    ...grid.tables,
    ...grid.elevation.map((z) => 2 * (z + water.vapourHead)),
    valve.stroke,
    atShut,
    atOpen,
    water.density * GRAVITY * seat,
    valve.curtainCoefficient * Math.PI * valve.seatDiameter,
    (valve.portCoefficient * valve.portArea) ** 2,
    0.5 * water.density * valve.dragCoefficient * seat,
    1 / valve.gapArea,
    1 / valve.movingMass,
    snifter,
    passageInertance(ram.deliveryValve),
    deliveryLossPerFlowSquared(ram.deliveryValve),
    ram.deliveryValve.crackingHead,
    ram.deliveryValve.backFlowPerBeat,
    ram.bodyElasticity,
    water.vapourHead,
    vesselHead,
    wasteValveTransit(valve) / SUBSTEPS,
  ].join('\n');
}

function compileYardstick(folder: string): string | undefined {
  const binary = join(folder, 'step');
  for (const compiler of ['cc', 'gcc', 'clang']) {
    const made = spawnSync(compiler, ['-O3', '-o', binary, join(HERE, 'step.c'), '-lm']);
    if (made.status === 0) return binary;
  }
  return undefined;
}

function compareWithC(installation: Installation): void {
  const folder = mkdtempSync(join(tmpdir(), 'fallwright-bench-'));
  try {
    const binary = compileYardstick(folder);
    if (!binary)
      console.log('No C compiler was found (cc, gcc, clang): the ratio to C is left out.');
    for (const reaches of [8, 64]) {
      // A head low enough that no cavity opens, so that both run the plain loop all the time.
      const vesselHead = 2.5 * installation.fall;
      const ours = timeStep(installation, reaches, vesselHead);
      let line = `step, ${ours.kernel.grid.reaches} reaches: ${ours.nanoseconds.toFixed(1)} ns`;
      if (binary) {
        const file = join(folder, `numbers-${reaches}.txt`);
        writeFileSync(file, numbersFor(installation, ours.kernel, vesselHead));
        const run = spawnSync(binary, [file], { encoding: 'utf8' });
        const [nanoseconds, beats, wasted, delivered] = run.stdout
          .trim()
          .split(' ')
          .map(Number) as [number, number, number, number];
        const { volumes } = ours.kernel;
        const gap = Math.max(
          Math.abs(volumes.wasted / wasted - 1),
          Math.abs(volumes.delivered / delivered - 1),
        );
        line += `, C -O3 ${nanoseconds.toFixed(1)} ns, ratio ${(ours.nanoseconds / nanoseconds).toFixed(2)} (target 1.5)`;
        line += `; beats ${ours.kernel.beats} and ${beats}, volumes differ by ${gap.toExponential(1)}`;
      }
      console.log(line);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function timeCalls(installation: Installation): Promise<void> {
  const bench = new Bench({ time: 1500 });
  bench
    .add('operating point, 8 reaches', () => operatingPoint(installation))
    .add('start-up, stop valve shut', () => startUp(installation, { stopValve: 'shut' }))
    .add('start-up, delivery open', () => startUp(installation, { stopValve: 'open' }))
    .add('answer without changes', () => answerFor(installation, { changes: false }))
    .add('answer with changes', () => answerFor(installation));
  await bench.run();
  for (const task of bench.tasks) {
    const { result } = task;
    const median = 'latency' in result ? result.latency.p50 : Number.NaN;
    const target = task.name.startsWith('operating point') ? ', target 1 ms' : '';
    console.log(`${task.name}: median ${median.toFixed(2)} ms${target}`);
  }
  const sixty = startUp(installation, { stopValve: 'open', longest: 60 });
  const from = performance.now();
  const again = startUp(installation, { stopValve: 'open', longest: 60 });
  const spent = performance.now() - from;
  const perMinute = (spent * 60) / again.simulatedTime;
  console.log(
    `start-up: ${perMinute.toFixed(1)} ms for 60 simulated seconds, target 60 ms (${sixty.steps} steps)`,
  );
}

/** Tries behind "How sure", with everything unsure that the site leaves open; the fastest of a few runs. */
function timeSamples(site: Site): void {
  const { installation } = installationOf(site);
  const inputs = uncertaintiesOf(site);
  let best = Infinity;
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    const from = performance.now();
    sampledAnswer(installation, inputs, { samples: 500, seed: repeat });
    best = Math.min(best, performance.now() - from);
  }
  console.log(`500 samples: ${best.toFixed(0)} ms on one core, target 1000 ms`);
}

/** An invented price list, in the currency's smallest unit. */
function choiceRequest(need: number | undefined): ChoiceRequest {
  const pipe = (name: string, costPerMetre: number) => {
    const found = findPipe(name);
    if (!found.ok) throw new Error(`no pipe called ${name}`);
    return { key: name, name, pipe: found.pipe, costPerMetre };
  };
  const ram = (size: TypicalSize, cost: number) => ({
    key: size,
    name: size,
    cost,
    setUpTime: 4.5 * 3600,
    tunings: [0.7, 1, 1.5].map((factor) => {
      const typical = typicalRam(size);
      const { wasteValve } = typical;
      if (wasteValve.kind !== 'weighted') throw new Error('typical rams have weights');
      const submergedWeight = factor * wasteValve.submergedWeight;
      const movingMass = factor * wasteValve.movingMass;
      return {
        name: `weight × ${factor}`,
        ram: { ...typical, wasteValve: { ...wasteValve, submergedWeight, movingMass } },
      };
    }),
  });
  return {
    place: {
      water: waterAt({ temperature: 10, altitude: 200 }),
      source: { kind: 'steady', yield: 1.2e-3 },
      fall: 2.4,
      lift: 18,
      driveRoute: { length: 12 },
      deliveryRoute: { length: 120 },
      driveLaying: {
        entranceLoss: 1.5,
        fittingsLoss: 0.4,
        restraint: 'anchoredThroughout',
        freeAirFraction: 0,
      },
    },
    wish: { driveLengths: [12, 13, 14, 15, 16.5, 18], ...(need === undefined ? {} : { need }) },
    offers: {
      rams: [ram('DN20', 30_000), ram('DN25', 38_000), ram('DN32', 52_000), ram('DN50', 90_000)],
      drivePipes: [
        pipe('steel sch 40 3/4 in', 900),
        pipe('steel sch 40 1 in', 1200),
        pipe('steel sch 40 1-1/4 in', 1600),
        pipe('steel sch 40 1-1/2 in', 1900),
        pipe('steel sch 40 2 in', 2600),
        pipe('PE100 SDR11 25', 200),
        pipe('PE100 SDR11 32', 310),
        pipe('PE100 SDR11 40', 460),
        pipe('PE100 SDR11 50', 700),
        pipe('PE100 SDR11 63', 1100),
        pipe('PVC sch 40 1 in', 350),
        pipe('PVC sch 40 2 in', 800),
      ],
      feederPipes: [],
      deliveryPipes: [pipe('PE100 SDR11 32', 310)],
      vessels: [],
      tanks: [],
      items: (Object.keys(ITEM_UNITS) as ItemKind[]).map((kind) => ({
        key: kind,
        name: kind,
        kind,
        cost: { trench: 800, laying: 300, labour: 2000, footing: 3000 }[kind as string] ?? 500,
      })),
    },
  };
}

/** A choice over 4 rams, 3 tunings, 12 drive pipes and 6 lengths, on this one thread. */
function timeChoice(): void {
  const needs = [
    ['with no need stated', undefined],
    ['for 2000 litres a day', 2 / 86_400],
  ] as const;
  for (const [words, need] of needs) {
    const request = choiceRequest(need);
    const from = performance.now();
    const work = process.cpuUsage();
    const { progress, priced } = chooseHere(request);
    const spent = (performance.now() - from) / 1000;
    const { user, system } = process.cpuUsage(work);
    const worked = (user + system) / 1e6;
    const brute = performance.now();
    const all = chooseHere(request, { isBruteForce: true });
    const bruteSpent = (performance.now() - brute) / 1000;
    const isSame =
      all.priced.front.map((c) => c.candidate.key).join() ===
      priced.front.map((c) => c.candidate.key).join();
    const share = (count: number) => `${((100 * count) / progress.combinations).toFixed(0)} %`;
    console.log(
      `choice ${words}: ${progress.combinations} combinations in ${spent.toFixed(2)} s with picks quoted (${worked.toFixed(2)} s of one core), target 5 s; ` +
        `${share(progress.rejected)} turned away by limits, ${share(progress.pruned)} beaten by bound, ` +
        `${progress.runs} run; front of ${priced.front.length}; ` +
        `brute force ${bruteSpent.toFixed(2)} s, ${isSame ? 'the same front' : 'ANOTHER FRONT'}`,
    );
  }
}

/** The workshop's files of the same size: 4 rams of 3 tunings, 12 drive pipes, one delivery pipe. Invented. */
function workshopFiles(folder: string): { readonly [Name in 'site' | 'range' | 'prices']: string } {
  const { offers } = choiceRequest(undefined);
  const weights = { DN20: 35, DN25: 61, DN32: 113, DN50: 345 } as Readonly<Record<string, number>>;
  const rams = offers.rams.map(({ key, cost = 0 }) => {
    const own = weights[key] ?? 0;
    const list = [0.7, 1, 1.5].map((factor) => `${Math.round(factor * own)} g`).join(', ');
    return `  - { id: ${key.toLowerCase()}, name: ${key}, ram: ${key}, settings: { weights: [${list}] }, setUp: 5 h, price: ${cost / 100} EUR }`;
  });
  const pipes = [
    ...offers.drivePipes.map((one) => ({ ...one, use: 'drive' })),
    ...offers.deliveryPipes.map((one) => ({
      ...one,
      key: `${one.key} for delivery`,
      use: 'delivery',
    })),
  ];
  const rows = [
    ...pipes.map(
      ({ key, pipe, costPerMetre = 0, use }) =>
        `${key},pipe,${pipe.name},m,${costPerMetre / 100},${use}`,
    ),
    ...Object.keys(ITEM_UNITS).map((kind) => `${kind},${kind},,,5,`),
  ];
  const write = (name: string, lines: readonly string[]): string => {
    const file = join(folder, name);
    writeFileSync(file, `${lines.join('\n')}\n`);
    return file;
  };
  return {
    site: write('site.yaml', [
      'fallwright: site@1',
      'source: { flow: 72 L/min ± 7 L/min, months: { aug: 60 L/min } }',
      'fall: 2.4 m',
      'drive: { length: 12 m }',
      'lift: 18 m',
      'delivery: { length: 120 m }',
      'demand: 2000 L/day',
    ]),
    range: write('range.yaml', ['fallwright: range@1', 'rams:', ...rams]),
    prices: write('prices.csv', ['code,kind,size,unit,price (EUR),use', ...rows]),
  };
}

/** The whole command, from its start to its page, on as many threads as there are processors. */
function timeChooseCommand(): void {
  const folder = mkdtempSync(join(tmpdir(), 'fallwright-bench-'));
  try {
    const { site: place, range, prices } = workshopFiles(folder);
    const lengths = '12 m; 13 m; 14 m; 15 m; 16.5 m; 18 m';
    const files = [place, '--range', range, '--prices', prices, '--lengths', lengths];
    for (const more of [['--no-chance'], []]) {
      const from = performance.now();
      const { stdout, stderr, status } = spawnSync(
        process.execPath,
        [join(HERE, '../../cli/fallwright.mjs'), 'choose', ...files, ...more],
        { encoding: 'utf8' },
      );
      const spent = (performance.now() - from) / 1000;
      if (status !== 0) throw new Error(stderr);
      const spared = /\d[\d,]* combinations:[\s\S]*?spared/
        .exec(stdout)?.[0]
        .replaceAll(/\s+/g, ' ');
      console.log(
        `fallwright choose ${more.join(' ') || 'with chances'}: ${spent.toFixed(1)} s on ${availableParallelism()} threads at a load of ${(loadavg()[0] ?? 0).toFixed(0)}, target 5 s; ${spared}`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const site = example();
const { installation } = installationOf(site);
compareWithC(installation);
await timeCalls(installation);
timeChoice();
timeChooseCommand();
timeSamples(site);
