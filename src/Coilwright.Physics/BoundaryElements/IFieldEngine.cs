using System.Numerics;
using Coilwright.Physics.Winding;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>One wound coil as the field sees it. Sign +1 is counter-clockwise seen from the top.</summary>
public sealed record FieldCoil(Bobbin Bobbin, double BuildM, double Turns, int Sign, Vector3M Position, IReadOnlyList<PoleModel> Poles);

/// <summary>Coils, bars and sheets to solve, and the frequencies asked for, Hz.</summary>
public sealed record FieldProblem(
    IReadOnlyList<FieldCoil> Coils,
    IReadOnlyList<BarModel> Bars,
    IReadOnlyList<SheetModel> Sheets,
    IReadOnlyList<double> FrequenciesHz
);

/// <summary>Something a solution leaves out, beside the field of the recipe it is about.</summary>
public sealed record FieldNote(string Field, string Message);

/// <summary>What a cover's or plate's conductivity does.</summary>
/// <param name="Index">Place in the problem's list of sheets.</param>
/// <param name="Sheet">The part.</param>
/// <param name="ByConductivityH">At each frequency the change of L − jR/ω per relative change of conductivity (or thickness), H.</param>
public sealed record SheetEffect(int Index, SheetModel Sheet, IReadOnlyList<Complex[,]> ByConductivityH);

/// <summary>What the field gives the circuit. Matrices by coil, turns included, signed by the winding signs.</summary>
public sealed record FieldSolution
{
    public required double[,] AirInductanceH { get; init; }
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

    /// <summary>
    /// Change of each coil's turns × area with its build, m²/m, and with the cores at the upper end of their interval, m²; empty when not
    /// solved.
    /// </summary>
    public double[] AreaByBuildM2PerM { get; init; } = [];
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
    public IReadOnlyList<FieldNote> Notes { get; init; } = [];

    /// <summary>The static field in space of the same solution.</summary>
    public required FieldMap Map { get; init; }
}

/// <summary>Solves the field of a pickup. Engines differ in speed and error, not in meaning.</summary>
public interface IFieldEngine
{
    string Name { get; }

    /// <summary>Inductances and areas of the problem's coils.</summary>
    FieldSolution Solve(FieldProblem problem, CancellationToken cancel = default);
}
