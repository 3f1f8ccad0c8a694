//! Tasks spread over the processors.

use std::sync::Mutex;

/// Does tasks on as many threads as there are; the order stays.
pub(super) fn on_threads<T: Sync, R: Send>(tasks: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let next = Mutex::new(0);
    let done: Mutex<Vec<(usize, R)>> = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..threads.min(tasks.len()) {
            scope.spawn(|| {
                loop {
                    let i = {
                        let Ok(mut next) = next.lock() else { return };
                        *next += 1;
                        *next - 1
                    };
                    let Some(task) = tasks.get(i) else { return };
                    let result = work(task);
                    let Ok(mut done) = done.lock() else { return };
                    done.push((i, result));
                }
            });
        }
    });
    let mut done = done.into_inner().unwrap_or_default();
    done.sort_by_key(|(i, _)| *i);
    done.into_iter().map(|(_, result)| result).collect()
}
