/** Who makes a change: the device it is made on, and the person where one is named. */
export type Who = { deviceId: string; personId: string | null };
