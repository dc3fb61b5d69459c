import { describe, expect, it } from 'vitest';
import { refuseNetworkFileSystem } from '@/lib/command/network-file-system.mjs';

// In the form that proc_pid_mounts(5) describes.
const mounts = `/dev/sda1 / ext4 rw,relatime 0 0
server:/shop /mnt/shop nfs4 rw,vers=4.2 0 0
//pc/share /mnt/with\\040space cifs rw 0 0
/dev/sdb1 /mnt/shop/disk ext4 rw 0 0
`;

describe('refuseNetworkFileSystem', () => {
  it.each([
    ['/mnt/shop/data', 'nfs4'],
    ['/mnt/shop', 'nfs4'],
    ['/mnt/with space/data', 'cifs'],
  ])('refuses %s, a share by %s, with advice', (folder, kind) => {
    expect(() => refuseNetworkFileSystem(folder, mounts)).toThrow(
      `is on a network share (${kind})`,
    );
    expect(() => refuseNetworkFileSystem(folder, mounts)).toThrow('postgresql://');
  });

  it.each(['/home/ann/data', '/mnt/shop/disk/data', '/mnt/shopping'])('allows %s', (folder) => {
    expect(() => refuseNetworkFileSystem(folder, mounts)).not.toThrow();
  });

  it('goes by the mount that lies on top where two are stacked', () => {
    const stacked = `${mounts}/dev/sdc1 /mnt/shop ext4 rw 0 0\n`;
    expect(() => refuseNetworkFileSystem('/mnt/shop/data', stacked)).not.toThrow();
  });

  it('refuses nothing where mounts are not told', () => {
    expect(() => refuseNetworkFileSystem('/mnt/shop/data', '')).not.toThrow();
  });
});
