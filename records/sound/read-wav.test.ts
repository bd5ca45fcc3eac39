import { seededStream } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { type Recording, readWav } from './read-wav.ts';

interface Wav {
  readonly code?: number;
  readonly channels?: number;
  readonly sampleRate?: number;
  readonly bits?: number;
  readonly data?: readonly number[];
  readonly before?: readonly number[];
  readonly dataSize?: number;
  readonly magic?: string;
}

const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const u16 = (value: number): number[] => [value & 255, (value >> 8) & 255];
const u32 = (value: number): number[] => [
  ...u16(value & 0xffff),
  ...u16(Math.floor(value / 65536)),
];

function wav(of: Wav): Uint8Array {
  const { code = 1, channels = 1, sampleRate = 8000, bits = 16, data = [], before = [] } = of;
  const frame = (channels * bits) / 8;
  const format = [
    ...u16(code),
    ...u16(channels),
    ...u32(sampleRate),
    ...u32(sampleRate * frame),
    ...u16(frame),
    ...u16(bits),
  ];
  const body = [
    ...letters('WAVE'),
    ...before,
    ...letters('fmt '),
    ...u32(16),
    ...format,
    ...letters('data'),
    ...u32(of.dataSize ?? data.length),
    ...data,
  ];
  return Uint8Array.from([...letters(of.magic ?? 'RIFF'), ...u32(body.length), ...body]);
}

function recording(bytes: Uint8Array): Recording {
  const read = readWav(bytes);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value;
}

function fault(bytes: Uint8Array): string {
  const read = readWav(bytes);
  if (read.ok) throw new Error('it was read');
  return read.problems.map(({ message }) => message).join(' ');
}

const floats = (values: readonly number[]): number[] => [
  ...new Uint8Array(Float32Array.from(values).buffer),
];

describe('a WAV file', () => {
  test.each([
    ['8 bits', { bits: 8, data: [128, 192, 0, 255] }, [0, 0.5, -1, 127 / 128]],
    ['16 bits', { bits: 16, data: [0, 0, 0, 64, 0, 128, 255, 127] }, [0, 0.5, -1, 32767 / 32768]],
    ['24 bits', { bits: 24, data: [0, 0, 64, 0, 0, 128, 1, 0, 0] }, [0.5, -1, 2 ** -23]],
    ['32 bits', { bits: 32, data: [0, 0, 0, 64, 0, 0, 0, 128] }, [0.5, -1]],
    ['floating point', { code: 3, bits: 32, data: floats([0.25, -0.75]) }, [0.25, -0.75]],
  ] as const)('of %s gives its samples', (_, of, samples) => {
    const read = recording(wav(of));
    expect([...read.samples]).toEqual([...samples].map(Math.fround));
    expect(read).toMatchObject({ sampleRate: 8000, channels: 1, notices: [] });
    expect(read.lasts).toBe(samples.length / 8000);
  });

  test('of two channels is mixed to one', () => {
    const read = recording(wav({ channels: 2, data: [0, 64, 0, 0, 0, 128, 0, 64] }));
    expect([...read.samples]).toEqual([0.25, -0.25]);
    expect(read.channels).toBe(2);
  });

  test('with other chunks before the sound, one of an odd length, is read', () => {
    const before = [...letters('LIST'), ...u32(3), 1, 2, 3, 0];
    expect([...recording(wav({ before, data: [0, 64] })).samples]).toEqual([0.5]);
  });

  test('that was cut short gives what is there, and says so', () => {
    const read = recording(wav({ data: [0, 64, 0, 64, 7], dataSize: 40 }));
    expect([...read.samples]).toEqual([0.5, 0.5]);
    expect(read.notices[0]?.message).toContain('13 %');
  });

  test('that a recorder never closed is read to its end', () => {
    for (const dataSize of [0, 0xffffffff]) {
      const read = recording(wav({ data: [0, 64, 0, 64], dataSize }));
      expect(read.samples).toHaveLength(2);
      expect(read.notices).toEqual([]);
    }
    expect(
      recording(wav({ magic: 'RF64', data: [0, 64], dataSize: 0xffffffff })).samples,
    ).toHaveLength(1);
  });

  test('with broken numbers is silent there, and says so', () => {
    const read = recording(wav({ code: 3, bits: 32, data: floats([Number.NaN, 0.5]) }));
    expect([...read.samples]).toEqual([0, 0.5]);
    expect(read.notices[0]?.message).toContain('1 samples');
  });
});

describe('what is no WAV file is told by name', () => {
  test.each([
    ['', /empty/],
    ['ID3\u0003 and so on', /MP3/],
    ['\u00ff\u00fb\u0090', /MP3/],
    ['OggS\u0000', /Ogg/],
    ['\u0000\u0000\u0000\u0018ftypM4A ', /M4A/],
    ['fallwright: site@1', /no WAV/],
    ['RIFF\u0010\u0000\u0000\u0000AVI LIST', /no WAV/],
  ])('%j', (text, words) => {
    expect(fault(Uint8Array.from(letters(text)))).toMatch(words);
  });

  test.each([
    [{ code: 85, data: [0, 0] }, /packed: MP3.*PCM/],
    [{ code: 999, data: [0, 0] }, /code 999/],
    [{ channels: 0, data: [0, 0] }, /0 channels/],
    [{ channels: 4000, data: [0, 0] }, /4000 channels/],
    [{ bits: 12, data: [0, 0] }, /12 bits/],
    [{ sampleRate: 7, data: [0, 0] }, /7 samples a second/],
    [{ data: [] }, /no sound/],
    [{ data: [1] }, /no sound/],
  ] as const)('%j', (of, words) => {
    expect(fault(wav(of))).toMatch(words);
  });

  test('a file that ends at any place gives a reason and never an exception', () => {
    const whole = wav({ before: [...letters('LIST'), ...u32(2), 1, 2], data: [0, 64] });
    for (let length = 0; length < whole.length - 1; length++) {
      expect(fault(whole.subarray(0, length)).length).toBeGreaterThan(20);
    }
  });

  test('bytes changed at random give a sound or a reason', () => {
    const next = seededStream(1, 'wav');
    const whole = wav({
      channels: 2,
      before: [...letters('LIST'), ...u32(4), 1, 2, 3, 4],
      data: Array.from({ length: 64 }, (_, i) => i),
    });
    for (let round = 0; round < 2000; round++) {
      const bytes = whole.slice();
      for (let k = 0; k < 1 + 3 * next(); k++)
        bytes[Math.floor(next() * bytes.length)] = Math.floor(256 * next());
      const read = readWav(bytes);
      if (read.ok) expect(read.value.samples.every(Number.isFinite)).toBe(true);
      else expect(read.problems[0]?.message.length).toBeGreaterThan(20);
    }
  });
});
