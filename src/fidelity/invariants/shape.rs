//! The shape of a network as plain data, drawn from a seed or made by a property test.

use crate::physics::fluid::Gas;
use crate::physics::network::{ElementId, Network, NetworkBuilder, NodeId};
use crate::physics::pipe::{PipeMaterial, PipeSpec, TubingSpec};
use crate::physics::regulator::{Behaviour, RegulatorSpec};
use crate::rng::Stream;
use crate::units::{P_STD_PA, T_STD_K};

/// Seed of all draws of this chapter.
pub(super) const SEED: u64 = 20_260_117;

/// A network: sources of given pressure, volumes, and links between them.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// Gauge pressures of the sources, in pascals.
    pub sources: Vec<f64>,
    /// Volumes whose pressure the network finds.
    pub volumes: Vec<Volume>,
    /// What joins sources and volumes.
    pub links: Vec<Link>,
}

/// A volume of gas that links join.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Volume {
    /// Its size, in m³.
    pub m3: f64,
    /// Its gauge pressure at the start, in pascals.
    pub start_pa: f64,
}

/// What joins two places; places are numbered, sources before volumes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// Number of the place at one end; of a regulator, its inlet.
    pub from: usize,
    /// The other end; a regulator senses here.
    pub to: usize,
    /// What lets the gas from one end to the other.
    pub kind: LinkKind,
}

/// What lets gas through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LinkKind {
    /// An opening of this effective area, in m².
    Hole(f64),
    /// Steel pipe of this bore and length, in metres.
    Pipe(f64, f64),
    /// Corrugated tubing of this EHD and length, in metres.
    Tubing(u16, f64),
    /// A regulator of this set point, in pascals, and rated flow, in standard m³/s.
    Regulator(f64, f64),
}

/// A network built from a shape.
#[derive(Debug, Clone)]
pub struct Built {
    /// The compiled network, at its starting pressures.
    pub network: Network,
    /// Places in the shape's numbering.
    pub places: Vec<NodeId>,
    /// Elements in the order of the shape's links.
    pub elements: Vec<ElementId>,
}

impl Shape {
    /// Draws a shape: every volume hangs on something before it, with a few links more.
    #[must_use]
    pub fn drawn(stream: &mut Stream) -> Self {
        let sources: Vec<f64> = [0.0, stream.between(200.0, 3_500.0), stream.between(2e3, 7e4)]
            .into_iter()
            .take(2 + stream.below(2) as usize)
            .collect();
        let highest = sources.iter().copied().fold(0.0, f64::max);
        let count = 2 + stream.below(7) as usize;
        let volumes: Vec<Volume> = (0..count)
            .map(|_| Volume {
                m3: libm::pow(10.0, stream.between(-5.0, -2.0)),
                start_pa: stream.between(0.0, highest),
            })
            .collect();
        let mut links = Vec::new();
        for k in 0..count {
            let to = sources.len() + k;
            let from = stream.below(u32::try_from(to).unwrap_or(1)) as usize;
            links.push(Link { from, to, kind: LinkKind::drawn(stream) });
        }
        for _ in 0..1 + stream.below(5) {
            let places = u32::try_from(sources.len() + count).unwrap_or(1);
            let (from, to) = (stream.below(places) as usize, stream.below(places) as usize);
            if from != to && (from >= sources.len() || to >= sources.len()) {
                links.push(Link { from, to, kind: LinkKind::drawn(stream) });
            }
        }
        Self { sources, volumes, links }
    }

    /// Builds it in the order given: places and links by their numbers, each once.
    #[must_use]
    pub fn build(&self, places: &[usize], links: &[usize]) -> Built {
        let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
        let mut nodes = vec![None; self.places()];
        for &place in places {
            let node = match self.sources.get(place) {
                Some(&pa) => b.fixed(pa),
                None => {
                    let Some(volume) = self.volumes.get(place - self.sources.len()) else {
                        continue;
                    };
                    b.node(volume.m3, T_STD_K, volume.start_pa)
                }
            };
            if let Some(slot) = nodes.get_mut(place) {
                *slot = Some(node);
            }
        }
        let nodes: Vec<NodeId> = nodes.into_iter().flatten().collect();
        let mut elements = vec![None; self.links.len()];
        for &k in links {
            let Some(link) = self.links.get(k) else { continue };
            let (Some(&from), Some(&to)) = (nodes.get(link.from), nodes.get(link.to)) else {
                continue;
            };
            if let Some(slot) = elements.get_mut(k) {
                *slot = Some(link.kind.add(&mut b, from, to));
            }
        }
        Built {
            network: b.build(),
            places: nodes,
            elements: elements.into_iter().flatten().collect(),
        }
    }

    /// Builds it in its own order.
    #[must_use]
    pub fn built(&self) -> Built {
        let places: Vec<usize> = (0..self.places()).collect();
        let links: Vec<usize> = (0..self.links.len()).collect();
        self.build(&places, &links)
    }

    /// How many places it has.
    #[must_use]
    pub fn places(&self) -> usize {
        self.sources.len() + self.volumes.len()
    }

    /// The same with every link's ends exchanged; regulators, which sense one end, stay.
    #[must_use]
    pub fn turned(&self) -> Self {
        let turn = |link: &Link| match link.kind {
            LinkKind::Regulator(..) => *link,
            LinkKind::Hole(_) | LinkKind::Pipe(..) | LinkKind::Tubing(..) => {
                Link { from: link.to, to: link.from, ..*link }
            }
        };
        Self { links: self.links.iter().map(turn).collect(), ..self.clone() }
    }
}

impl LinkKind {
    fn drawn(stream: &mut Stream) -> Self {
        let length_m = stream.between(0.3, 30.0);
        match stream.below(8) {
            0..=3 => Self::Hole(libm::pow(10.0, stream.between(-8.0, -4.0))),
            4 | 5 => Self::Pipe(stream.between(0.008, 0.05), length_m),
            6 => Self::Tubing([13, 18, 25, 37][stream.below(4) as usize], length_m),
            _ => Self::Regulator(stream.between(300.0, 3_000.0), stream.between(2e-4, 2e-3)),
        }
    }

    fn add(self, b: &mut NetworkBuilder, from: NodeId, to: NodeId) -> ElementId {
        match self {
            Self::Hole(area_m2) => b.opening(from, to, area_m2),
            Self::Pipe(id_m, length_m) => {
                b.pipe(from, to, &PipeSpec::new(PipeMaterial::Steel, id_m, length_m))
            }
            Self::Tubing(ehd, length_m) => {
                b.tubing(from, to, &TubingSpec { ehd, length_m, extra_fittings: 0 })
            }
            Self::Regulator(set_pa, flow) => {
                let wanted = Behaviour::new(set_pa, 1.2 * set_pa, 0.1 * set_pa, 3.0 * set_pa, flow);
                match RegulatorSpec::from_behaviour(&wanted, &Gas::natural(), P_STD_PA) {
                    Ok(spec) => b.regulator(from, to, spec),
                    Err(_) => b.opening(from, to, 1e-6),
                }
            }
        }
    }
}

impl Built {
    /// Gauge pressure at a place, in pascals.
    #[must_use]
    pub fn pressure_pa(&self, place: usize) -> f64 {
        self.places.get(place).map_or(f64::NAN, |&node| self.network.pressure_pa(node))
    }

    /// Flow through a link, in standard m³/s.
    #[must_use]
    pub fn flow_m3_s(&self, link: usize) -> f64 {
        self.elements.get(link).map_or(f64::NAN, |&it| self.network.flow_std_m3_s(it))
    }
}
