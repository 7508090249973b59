import { pictures } from 'virtual:handbook';
import type { JSX } from 'preact';
import { handbookAt } from '../../state/handbook.ts';
import type { Inline, TextBlock } from './handbook-text.ts';

/** Blocks of text as elements of the page; the chapter's title stands above them. */
export function Blocks({ blocks }: { readonly blocks: readonly TextBlock[] }) {
  return (
    <>
      {blocks.map((block, i) => (
        <One key={i} block={block} />
      ))}
    </>
  );
}

function One({ block }: { readonly block: TextBlock }) {
  if ('heading' in block) {
    const Heading = `h${Math.min(6, block.level + 1)}` as keyof JSX.IntrinsicElements & 'h3';
    return (
      <Heading id={block.id} tabIndex={-1}>
        <Lines lines={block.heading} />
      </Heading>
    );
  }
  if ('paragraph' in block)
    return (
      <p>
        <Lines lines={block.paragraph} />
      </p>
    );
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide listing scrolls, also by keyboard
  if ('listing' in block) return <pre tabIndex={0}>{block.listing}</pre>;
  if ('quote' in block)
    return (
      <blockquote>
        <Blocks blocks={block.quote} />
      </blockquote>
    );
  if ('items' in block) {
    const items = block.items.map((item, i) => (
      <li key={i}>
        <Blocks blocks={item} />
      </li>
    ));
    return block.from === undefined ? <ul>{items}</ul> : <ol start={block.from}>{items}</ol>;
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls, also by keyboard
    <div class="handbook-table" tabIndex={0}>
      <table>
        <thead>
          <tr>
            {block.head.map((cell, i) => (
              <th key={i} scope="col">
                <Lines lines={cell} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {block.rows.map((row, i) => (
            <tr key={i}>
              {row.map((cell, k) => (
                <td key={k}>
                  <Lines lines={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Lines({ lines }: { readonly lines: readonly Inline[] }) {
  return (
    <>
      {lines.map((one, i) => (
        <Piece key={i} piece={one} />
      ))}
    </>
  );
}

function Piece({ piece }: { readonly piece: Inline }) {
  if (typeof piece === 'string') return <>{piece}</>;
  if ('code' in piece) return <code>{piece.code}</code>;
  if ('picture' in piece) return <img src={pictures[piece.picture]} alt={piece.alt} loading="lazy" />;
  if ('strong' in piece)
    return (
      <strong>
        <Lines lines={piece.strong} />
      </strong>
    );
  if ('em' in piece)
    return (
      <em>
        <Lines lines={piece.em} />
      </em>
    );
  const { to, text } = piece;
  if ('address' in to)
    return (
      <a href={to.address} target="_blank" rel="noreferrer">
        <Lines lines={text} />
      </a>
    );
  return (
    <button type="button" class="link" onClick={() => (handbookAt.value = to)}>
      <Lines lines={text} />
    </button>
  );
}
