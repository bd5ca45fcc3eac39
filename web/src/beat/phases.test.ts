import { expect, test } from 'vitest';
import { madeFilm } from './fixtures/made-film.ts';
import { phaseAt, phasesOf } from './phases.ts';

const kinds = (film: Parameters<typeof phasesOf>[0]): string[] =>
  phasesOf(film).map(({ kind, firstFrame, lastFrame }) => `${kind} ${firstFrame}–${lastFrame}`);

test('a beat gathers speed, delivers, recoils, and gathers speed again', () => {
  const film = madeFilm({
    opening: [1, 1, 0, 0, 0, 0, 1, 1, 1],
    driveFlow: [1, 2, 2, 1, -1, -1, -1, 0, 1],
    deliveryFlow: [0, 0, 0, 1, 1, -1, 0, 0, 0],
  });
  expect(kinds(film)).toEqual(['gathers 0–1', 'delivers 2–4', 'recoils 5–6', 'gathers 7–8']);
});

test('a delivery valve that chatters is one delivery', () => {
  const film = madeFilm({ opening: [0, 0, 0, 0, 0, 1], deliveryFlow: [1, -1, 0, 1, 0, 0] });
  expect(kinds(film).slice(0, 2)).toEqual(['delivers 0–3', 'recoils 4–4']);
});

test('a shut valve that passes nothing is shut, and one that never opens again stays so', () => {
  const film = madeFilm({
    opening: [1, 0, 0, 0],
    driveFlow: [1, 1, 0, 0],
    deliveryFlow: [0, 1, 0, 0],
  });
  expect(kinds(film)).toEqual(['gathers 0–0', 'delivers 1–1', 'shut 2–3']);
  expect(kinds(madeFilm({ opening: [0, 0, 1] }))).toEqual(['shut 0–1', 'gathers 2–2']);
});

test('every frame has one phase', () => {
  const film = madeFilm({ opening: [1, 0, 0, 1, 1, 0, 1], driveFlow: [1, 1, -1, -1, 1, 1, -1] });
  const phases = phasesOf(film);
  for (let frame = 0; frame < film.frames; frame++) {
    expect(phases.filter((p) => p.firstFrame <= frame && p.lastFrame >= frame)).toEqual([
      phaseAt(phases, frame),
    ]);
  }
});
