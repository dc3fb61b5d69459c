'use client';

import { benchKeys } from '@/lib/text/bench-keys';
import { BenchDialog } from './bench-dialog';
import styles from './list.module.css';

/** Every key of the Bench and what it does. */
export function KeysDialog({ onClose }: { onClose: () => void }) {
  return (
    <BenchDialog title="Keys" onClose={onClose}>
      <table className={styles.keys}>
        <caption className="unseen">Keys and what they do</caption>
        <tbody>
          {benchKeys.map(({ keys, does }) => (
            <tr key={keys}>
              <th scope="row">{keys}</th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </BenchDialog>
  );
}
