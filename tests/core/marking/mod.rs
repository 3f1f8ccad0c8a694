//! What written numbers, turns, calls, endings and leak checks cost, from both sides of each limit.

mod adjusting;
mod calls;
mod grounds;
mod joints;
mod numbers;
mod played;
mod sheet;
mod slips;
mod spells;
mod unread;
