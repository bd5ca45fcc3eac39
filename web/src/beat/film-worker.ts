/** The worker that films a beat. It holds no state; its frames are handed over, not copied. */
import type { BeatFilm, FilmOptions, Installation } from '@fallwright/engine';
import { filmBeat } from '@fallwright/engine';
import { expose, transfer } from 'comlink';

const work = {
  film(installation: Installation, options: FilmOptions): BeatFilm {
    const film = filmBeat(installation, options);
    const { time, opening, bodyHead, driveFlow, wasteFlow, deliveryFlow, lineHead, lineFlow } =
      film;
    const columns = [
      time,
      opening,
      bodyHead,
      driveFlow,
      wasteFlow,
      deliveryFlow,
      lineHead,
      lineFlow,
    ];
    return transfer(
      film,
      columns.map((column) => column.buffer),
    );
  },
};

export type FilmWork = typeof work;

expose(work);
