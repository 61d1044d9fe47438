import css from './notation.module.css';

type Block = { kind: 'head' | 'words' | 'gates' | 'table'; lines: string[] };

/** Headings, paragraphs, tables and blocks of gates: all that the guide is written in. */
function blocksOf(text: string): Block[] {
  const blocks: Block[] = [];
  let fence = false;
  for (const line of text.split('\n')) {
    const last = blocks.at(-1);
    if (line.startsWith('```')) {
      fence = !fence;
      if (fence) blocks.push({ kind: 'gates', lines: [] });
    } else if (fence) last!.lines.push(line);
    else if (line.startsWith('# ')) continue;
    else if (line.startsWith('#')) blocks.push({ kind: 'head', lines: [line.replace(/^#+ /, '')] });
    else if (line.trim() === '') blocks.push({ kind: 'words', lines: [] });
    else if (line.startsWith('|') && last?.kind !== 'table') blocks.push({ kind: 'table', lines: [line] });
    else if (last && last.kind !== 'head' && last.kind !== 'gates') last.lines.push(line);
    else blocks.push({ kind: 'words', lines: [line] });
  }
  return blocks.filter((block) => block.lines.length > 0);
}

export function Guide({ text }: { text: string }) {
  return blocksOf(text).map((block, at) => {
    if (block.kind === 'head')
      return (
        <h2 key={at} className={css.head}>
          {block.lines[0]}
        </h2>
      );
    if (block.kind === 'gates') return <Gates key={at} lines={block.lines} />;
    if (block.kind === 'table') return <Rows key={at} lines={block.lines} />;
    return (
      <p key={at} className={css.words}>
        <Code text={block.lines.join(' ')} />
      </p>
    );
  });
}

function Gates({ lines }: { lines: readonly string[] }) {
  return (
    <ul className={css.gates}>
      {lines.map((line) => (
        <li key={line} className="gate">
          {line}
        </li>
      ))}
    </ul>
  );
}

function Rows({ lines }: { lines: readonly string[] }) {
  const cells = (line: string) =>
    line
      .replace(/^\||\|$/g, '')
      .split('|')
      .map((cell) => cell.trim());
  const [head = '', , ...rows] = lines;
  return (
    <table>
      <thead>
        <tr>
          {cells(head).map((cell, at) => (
            <th key={at}>{cell}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row}>
            {cells(row).map((cell, at) => (
              <td key={at}>
                <Code text={cell} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const Code = ({ text }: { text: string }) =>
  text.split(/(`[^`]+`)/g).map((part, at) =>
    part.startsWith('`') ? (
      <code key={at} className="gate">
        {part.slice(1, -1)}
      </code>
    ) : (
      part
    ),
  );
