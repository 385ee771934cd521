namespace Coilwright.Physics.Circuit.Networks;

/// <summary>A resistor or a capacitor, or both in series, between two nodes. A value of 0 is not there.</summary>
/// <param name="Name">Its name in a netlist, without the leading letter.</param>
/// <param name="A">One node.</param>
/// <param name="B">The other.</param>
/// <param name="Ohm">Resistance, Ω.</param>
/// <param name="F">Capacitance, F.</param>
internal readonly record struct PlainPart(string Name, int A, int B, double Ohm, double F);

/// <summary>A coil's series branch from A to B with the voltage that the string induces in it, which lifts B over A.</summary>
/// <param name="Name">Its name in a netlist.</param>
/// <param name="A">Start.</param>
/// <param name="B">Finish.</param>
/// <param name="Source">Series branch of the whole coil.</param>
/// <param name="Share">Share of the coil's turns in this branch, 0…1; below 1 for the two parts of a tapped coil.</param>
/// <param name="Level">Induced voltage of this branch, relative to the circuit's 1 V, signed.</param>
internal readonly record struct BranchPart(string Name, int A, int B, ISeriesBranch Source, double Share, double Level);

/// <summary>Coupling of two branches: a mutual inductance, or, with none given, two parts of one winding.</summary>
/// <param name="First">Number of a branch.</param>
/// <param name="Second">Number of another branch.</param>
/// <param name="InductanceH">Mutual inductance, H, signed by the branches' own directions; null for two parts of one winding, which share
/// all flux.</param>
internal readonly record struct CouplingPart(int First, int Second, double? InductanceH);
