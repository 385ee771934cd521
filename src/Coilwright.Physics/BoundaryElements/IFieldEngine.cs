using System.Numerics;
using Coilwright.Physics.Winding;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>One wound coil as the field sees it. Sign +1 is counter-clockwise seen from the top.</summary>
/// <param name="Bobbin">What the coil is wound on.</param>
/// <param name="BuildM">Radial thickness of the winding, m, above zero.</param>
/// <param name="Turns">Turns, above zero; need not be whole.</param>
/// <param name="Sign">Sense of winding, +1 or −1.</param>
/// <param name="Position">Centre of the coil in the recipe's axes, m.</param>
/// <param name="Poles">Rows of poles inside it; empty for a coil with air inside.</param>
public sealed record FieldCoil(Bobbin Bobbin, double BuildM, double Turns, int Sign, Vector3M Position, IReadOnlyList<PoleModel> Poles);

/// <summary>Coils, bars and sheets to solve, and the frequencies asked for, Hz.</summary>
/// <param name="Coils">The coils, at least one; every matrix of the solution is in their order.</param>
/// <param name="Bars">Bar magnets and keepers; empty without.</param>
/// <param name="Sheets">Covers and plates; empty without.</param>
/// <param name="FrequenciesHz">Frequencies, Hz, above zero; the spectrum is in their order. Empty for the static field alone.</param>
public sealed record FieldProblem(
    IReadOnlyList<FieldCoil> Coils,
    IReadOnlyList<BarModel> Bars,
    IReadOnlyList<SheetModel> Sheets,
    IReadOnlyList<double> FrequenciesHz
);

/// <summary>Something a solution leaves out, beside the field of the recipe it is about.</summary>
/// <param name="Field">Path in the recipe, for example "metalwork[0]".</param>
/// <param name="Message">What is left out, in workshop words.</param>
public sealed record FieldNote(string Field, string Message);

/// <summary>What a cover's or plate's conductivity does.</summary>
/// <param name="Index">Place in the problem's list of sheets.</param>
/// <param name="Sheet">The part.</param>
/// <param name="ByConductivityH">At each frequency the change of L − jR/ω per relative change of conductivity (or thickness), H.</param>
public sealed record SheetEffect(int Index, SheetModel Sheet, IReadOnlyList<Complex[,]> ByConductivityH);

/// <summary>What the field gives the circuit. Matrices by coil, turns included, signed by the winding signs.</summary>
public sealed record FieldSolution
{
    /// <summary>Inductance of the windings without cores, H: own on the diagonal, mutual beside it.</summary>
    public required double[,] AirInductanceH { get; init; }

    /// <summary>The same with the cores, for a field too slow for eddy currents, H.</summary>
    public required double[,] StaticInductanceH { get; init; }

    /// <summary>Half-width of the 95 % interval of each element: permeability and the model's own error, H.</summary>
    public required double[,] InductanceSpreadH { get; init; }

    /// <summary>L − jR/ω at each frequency asked for, without the winding's own resistance, H.</summary>
    public required IReadOnlyList<Complex[,]> SpectrumH { get; init; }

    /// <summary>What the conductivity of each conducting cover or plate does to the spectrum.</summary>
    public IReadOnlyList<SheetEffect> SheetEffects { get; init; } = [];

    /// <summary>
    /// How the spectrum moves when the cores' permeabilities stand at the upper end of their intervals, H: real and imaginary part
    /// together. Empty when not solved.
    /// </summary>
    public IReadOnlyList<Complex[,]> SpectrumSpreadH { get; init; } = [];

    /// <summary>Change of each coil's turns × area with its build, m²/m; empty when not solved.</summary>
    public double[] AreaByBuildM2PerM { get; init; } = [];

    /// <summary>The same with the cores at the upper end of their interval, m²; empty when not solved.</summary>
    public double[] AreaSpreadM2 { get; init; } = [];

    /// <summary>Change of each coil's own air inductance with its build, H/m.</summary>
    public required double[] AirInductanceByBuildHPerM { get; init; }

    /// <summary>Turns × area with the cores, m², signed.</summary>
    public required double[] EffectiveAreaM2 { get; init; }

    /// <summary>What a field that changes from place to place links; null when not solved.</summary>
    public GradientArea? Gradient { get; init; }

    /// <summary>
    /// Half-width of the magnets' field and the output for flux that magnetic metalwork draws and that is not solved: values lie within a
    /// factor of 1 + this (95 %); zero without such.
    /// </summary>
    public double DrawnShare { get; init; }

    /// <summary>What the solution leaves out; empty when nothing.</summary>
    public IReadOnlyList<FieldNote> Notes { get; init; } = [];

    /// <summary>The static field in space of the same solution.</summary>
    public required FieldMap Map { get; init; }
}

/// <summary>Solves the field of a pickup. Engines differ in speed and error, not in meaning.</summary>
public interface IFieldEngine
{
    /// <summary>Word for the engine in answers and messages: "fast" or "accurate".</summary>
    string Name { get; }

    /// <summary>Inductances and areas of the problem's coils.</summary>
    /// <param name="problem">What to solve.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    FieldSolution Solve(FieldProblem problem, CancellationToken cancel = default);
}
