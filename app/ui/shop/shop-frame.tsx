import type { ReactNode } from 'react';
import { SheetHead } from '../primitives/sheet-head';
import { TitleBlock, type BlockCell } from '../primitives/title-block';
import styles from '../job/sheet-frame.module.css';

const index = [
  { label: 'Jobs', href: '/' },
  { label: 'Gauges', href: '/gauges' },
  { label: 'Tables', href: '/tables' },
  { label: 'Settings', href: '/settings' },
];

type Props = { current: string; block?: BlockCell[]; children: ReactNode };

/** What the sheets of the shop stand in, which belong to no job. */
export function ShopFrame({ current, block = [], children }: Props) {
  return (
    <div className={styles.page}>
      <SheetHead index={index} current={current} />
      <main className={styles.main}>{children}</main>
      <TitleBlock
        left={[
          { label: 'Sheet', value: current },
          { label: 'Open', value: 'only to this machine' },
        ]}
        right={block}
      />
    </div>
  );
}
