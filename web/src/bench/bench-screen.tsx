/** The bench: all tests of the workshop, or one of them. */
import '../measure/measure.css';
import './bench.css';
import { useEffect, useState } from 'react';
import { BenchList } from './bench-list.tsx';
import { BenchRoomContext, openBenchRoom } from './bench-room.ts';
import { OpenTest } from './open-test.tsx';

export function BenchScreen({ id }: { readonly id: string }) {
  const [room] = useState(openBenchRoom);
  useEffect(() => room.close, [room]);
  return (
    <BenchRoomContext value={room}>
      {id === '' ? <BenchList /> : <OpenTest key={id} id={id} />}
    </BenchRoomContext>
  );
}
