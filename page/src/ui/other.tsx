// Run and the drawing live in folders of their own; the page knows them by the contract.
import type { ComponentType } from 'preact';
import type { RunAreaProps } from '../contract';
import { Elevation as Drawn, type MovableElevationProps } from '../drawing/Elevation';
import { RunArea as Running } from '../run/RunArea';

export const RunArea: ComponentType<RunAreaProps> = Running;
export const Elevation: ComponentType<MovableElevationProps> = Drawn;
