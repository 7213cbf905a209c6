/** The channels between the preload script and the shell. */
export const CALL_CHANNEL = 'laydown:call';
export const HAND_OVER_CHANNEL = 'laydown:hand-over';
export const EVENT_CHANNEL = 'laydown:event';
