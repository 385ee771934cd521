using System.Numerics;
using Coilwright.Physics.BoundaryElements.Metalwork;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// The field of one geometry for its differences to neighbours: the same geometry with one length changed a little. Everything per turn,
/// all coils wound one way, without intervals.
/// </summary>
/// <remarks>
/// A neighbour is cut into the same elements, so that the cutting's error goes out of the difference, and is solved anew only as far as it
/// differs: parts that did not change keep what they do to each other; where no part changed, the kernel and its factors serve on. What is
/// left is solved exactly, not to first order, with the quick engine's cut: a coarser one serves rods, but not bars that all but touch
/// poles, where it moved single rates by more than the whole interval.
/// </remarks>
public sealed class NeighbourField
{
    private readonly FieldProblem _problem;
    private readonly FieldSettings _settings;
    private readonly BodyFactory _factory;
    private readonly SurfaceSystem _system;
    private readonly KernelBlocks _blocks;
    private readonly CoilField[] _windings;
    private readonly (double[] Drive, double[] Potential)[] _coupled;
    private readonly CoreSweep _sweep;
    private readonly double[][] _charges;

    private NeighbourField(FieldProblem problem, FieldSettings settings, NeighbourField? from, CancellationToken cancel)
    {
        (_problem, _settings) = (problem, settings);
        _factory = from?._factory.ForNeighbour() ?? new BodyFactory(settings);
        List<MagneticBody> bodies = _factory.Make(problem);
        _windings = [.. problem.Coils.Select(coil => new CoilField(coil, settings.Layers, settings.ArcNodes))];
        if (from is not null && from._blocks.AreParts(bodies) && from._system.IsMirrored == IsMirrored(problem, bodies))
        {
            (_system, _blocks) = (from._system, from._blocks);
            _coupled = [.. problem.Coils.Select((coil, c) => IsSame(coil, from._problem.Coils[c]) ? from._coupled[c] : Couple(c))];
            _sweep = from._sweep.For(_coupled);
        }
        else
        {
            _system = new SurfaceSystem(bodies, BodyFactory.MirrorPlane(problem, bodies));
            (double[] kernel, _blocks) = _system.Kernel(from?._blocks, cancel);
            _coupled = [.. _windings.Select((_, c) => Couple(c))];
            _sweep = new CoreSweep(_system, kernel, _coupled, cancel);
        }

        IsStill = ReferenceEquals(_system, from?._system) && problem.Coils.Zip(from._problem.Coils, IsSame).All(same => same);
        double[] middle = [.. _system.Materials.Select(material => material.RelativePermeability.Value)];
        _charges = _sweep.Charges(middle);
        AirInductanceH = Air(from);
        StaticInductanceH = Static(_sweep.Linkage(_charges));
        SpectrumH = Spectrum(middle, cancel);
        Map = new FieldMap(_system, _windings, _charges, () => _sweep.MagnetCharges(middle), _ => [], error: 0);
    }

    /// <summary>Inductance of the windings without cores, H per turns of both.</summary>
    public double[,] AirInductanceH { get; }

    /// <summary>The same with the cores at rest.</summary>
    public double[,] StaticInductanceH { get; }

    /// <summary>L − jR/ω at each frequency of the problem.</summary>
    public IReadOnlyList<Complex[,]> SpectrumH { get; }

    /// <summary>The static field in space.</summary>
    public FieldMap Map { get; }

    /// <summary>True for a neighbour whose windings and parts are those that it was solved from: its static field is theirs.</summary>
    public bool IsStill { get; }

    /// <summary>Change of each coil's own inductance without cores with its build, H/m.</summary>
    public IReadOnlyList<double> AirByBuildHPerM() => [.. _problem.Coils.Select(SurfaceFieldEngine.AirByBuild)];

    /// <summary>Area of each coil with its cores, m².</summary>
    public IReadOnlyList<double> AreasM2() => HumArea.Compute(_problem.Coils, _system, _charges);

    /// <summary>Its change with the build, m²/m.</summary>
    public IReadOnlyList<double> AreaByBuildM2PerM() =>
        [.. AreasM2().Select((area, c) => HumArea.ByBuild(_problem.Coils[c], area, CoresByBuild(c)))];

    /// <summary>What a hum field that changes from place to place links.</summary>
    public GradientArea Gradient() =>
        GradientArea.Compute(
            _problem.Coils,
            _system,
            _charges,
            [.. _charges.Select(_ => new List<double[]>())],
            coreError: 0,
            [.. _windings.Select((_, c) => CoresByBuild(c))],
            drawn: 0
        );

    /// <summary>Solves a geometry.</summary>
    /// <param name="problem">Its coils with one turn each, wound counter-clockwise.</param>
    /// <param name="cancel">Stops it.</param>
    public static NeighbourField Solve(FieldProblem problem, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new NeighbourField(problem, FieldSettings.Fast.For(BodyFactory.RodsOf(problem)), from: null, cancel);
    }

    /// <summary>The same with one length changed a little: as many coils, poles, bars and sheets, in their order.</summary>
    /// <param name="problem">The changed geometry.</param>
    /// <param name="cancel">Stops it.</param>
    public NeighbourField Neighbour(FieldProblem problem, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new NeighbourField(problem, _settings, this, cancel);
    }

    private static bool IsMirrored(FieldProblem problem, List<MagneticBody> bodies) => BodyFactory.MirrorPlane(problem, bodies) is not null;

    private static bool IsSame(FieldCoil one, FieldCoil other) =>
        one.Bobbin == other.Bobbin && one.Position == other.Position && Math.Abs(one.BuildM - other.BuildM) <= 0;

    private (double[] Drive, double[] Potential) Couple(int coil) => _system.Couple(_windings[coil]);

    private double CoresByBuild(int coil) => HumArea.CoresByBuild(_problem.Coils[coil], _windings[coil]);

    private double[,] Air(NeighbourField? from)
    {
        int n = _problem.Coils.Count;
        double[,] air = new double[n, n];
        bool[] same = [.. _problem.Coils.Select((coil, c) => from is not null && IsSame(coil, from._problem.Coils[c]))];
        for (int k = 0; k < air.Length; k++)
        {
            (int i, int j) = (k / n, k % n);
            if (same[i] && same[j])
            {
                air[i, j] = from!.AirInductanceH[i, j];
            }
            else
            {
                (FieldCoil one, FieldCoil other) = (_problem.Coils[Math.Max(i, j)], _problem.Coils[Math.Min(i, j)]);
                air[i, j] =
                    i == j
                        ? AirInductance.SelfPerTurnSquaredH(one.Bobbin, one.BuildM, _settings.Air)
                        : AirInductance.MutualPerTurnsH(one, other, _settings.Air);
            }
        }

        return air;
    }

    private double[,] Static(double[,] cores)
    {
        int n = _problem.Coils.Count;
        double[,] all = new double[n, n];
        for (int k = 0; k < all.Length; k++)
        {
            (int i, int j) = (k / n, k % n);
            all[i, j] = AirInductanceH[i, j] + (cores[i, j] + cores[j, i]) / 2;
        }

        return all;
    }

    private List<Complex[,]> Spectrum(double[] middle, CancellationToken cancel)
    {
        SheetResponse? sheets = SheetResponse.Solve(_problem, _settings, _windings, _system, _sweep, _charges, cancel);
        CoreSweep full = sheets?.Sweep ?? _sweep;
        if (_system.Count > 0 && _problem.FrequenciesHz.Count > 0)
        {
            full.Project(
                middle,
                (_settings.Directions * _windings.Length + _settings.SheetDirections * (sheets?.Count ?? 0)) * _system.Materials.Count
            );
        }

        return SurfaceFieldEngine.Spectrum(_problem, AirInductanceH, _system, full, sheets, [], cancel);
    }
}
