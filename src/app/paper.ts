// From a paper as data to a file: worded for one reader, without what that reader may not see.
import { decimal } from '../core/decimal.ts';
import { fullName, type Panel, type Paper, type PicturePaper, type TablePaper } from '../core/paper.ts';
import type { Reply } from '../core/reply.ts';
import { plainValue } from '../language/plain-value.ts';
import type { Reader, Render } from '../language/render.ts';
import type { AnswerFile, DrawnPanel, PaperMaker, Picture, Sheet } from './ports/paper.ts';

export interface Wording {
  readonly render: Render;
  readonly reader: Reader;
}

const TYPES = {
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  png: 'image/png',
} as const;

export function fileOf(maker: PaperMaker, paper: Paper, wording: Wording, caption: string): AnswerFile {
  const common = { name: fullName(paper), caption };
  switch (paper.is) {
    case 'table': {
      const sheet = sheetOf(paper, wording);
      return { ...common, type: TYPES[paper.format], bytes: () => maker.sheet(sheet) };
    }
    case 'picture': {
      const picture = pictureOf(paper, wording);
      return { ...common, type: TYPES.png, bytes: () => maker.draw(picture) };
    }
  }
}

function sheetOf({ format, columns, rows }: TablePaper, { render, reader }: Wording): Sheet {
  const shown = columns.flatMap((column, at) => (mayShow(column, reader) ? [{ column, at }] : []));
  return {
    format,
    columns: shown.map(({ column }) => render([column.label], reader)),
    rows: rows.map((row) =>
      shown.map(({ at }) => {
        const value = row[at];
        if (value === undefined) return undefined;
        const isWords = typeof value === 'object' && 'id' in value;
        return isWords ? { text: render([value], reader) } : plainValue(value, reader);
      }),
    ),
  };
}

function pictureOf({ title, panels }: PicturePaper, wording: Wording): Picture {
  const word = (reply: Reply): string => wording.render([reply], wording.reader);
  return {
    title: word(title),
    panels: panels.filter((panel) => mayShow(panel, wording.reader)).map((panel) => drawn(panel, word)),
  };
}

function drawn(panel: Panel, word: (reply: Reply) => string): DrawnPanel {
  const title = word(panel.title);
  switch (panel.is) {
    case 'bars': {
      const bars = panel.bars.map(({ label, text, value, tone }) => ({
        ...{ label: word(label), text: word(text), tone },
        value: value.toNumber(),
      }));
      return { is: 'bars', title, bars, ...(panel.of && { of: panel.of.toNumber() }) };
    }
    case 'trend': {
      const { points, band, mark, notes = [], tick } = panel;
      return {
        is: 'trend',
        title,
        points: points.map(({ label, value }) => ({ label: word(label), value: value.toNumber() })),
        ...(band && {
          band: { low: band.low.toNumber(), high: band.high.toNumber(), text: word(band.text) },
        }),
        ...(mark && { mark: mark.toNumber() }),
        notes: notes.map(word),
        tick: (value) => word(tick(decimal(value.toFixed(4)))),
      };
    }
  }
}

const mayShow = ({ cost }: { readonly cost?: true }, { seesCosts }: Reader): boolean =>
  cost !== true || seesCosts;
