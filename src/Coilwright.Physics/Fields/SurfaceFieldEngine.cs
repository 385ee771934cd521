using System.Numerics;

namespace Coilwright.Physics.Fields;

/// <summary>Windings by Neumann's integral, permeable parts by surface charge: both engines, at different settings.</summary>
internal sealed class SurfaceFieldEngine(FieldSettings settings)
{
    /// <summary>Slow enough for cores to follow without loss, Hz.</summary>
    private const double LeastHz = 1e-3;

    public FieldSolution Solve(FieldProblem problem, CancellationToken cancel)
    {
        IReadOnlyList<FieldCoil> coils = problem.Coils;
        double[,] air = AirPerTurns(coils, out double[] byBuild);
        cancel.ThrowIfCancellationRequested();
        List<MagneticBody> bodies = new BodyFactory(settings).Make(problem);
        CoilField[] windings = [.. coils.Select(coil => new CoilField(coil, settings.Layers, settings.ArcNodes))];
        SurfaceSystem system = new(bodies, BodyFactory.MirrorPlane(problem, bodies));
        CoreSweep sweep = new(system, system.Kernel(cancel), [.. windings.Select(system.Couple)]);
        cancel.ThrowIfCancellationRequested();
        double[] middle = [.. system.Materials.Select(material => material.RelativePermeability.Value)];
        double[][] charges = sweep.Charges(middle);
        double[,] cores = sweep.Linkage(charges);
        double[] areas = Areas(coils, system, charges);
        double[,] spread = Spread(coils, sweep, system, middle, cores, out double[] areaSpread);
        AllowForSheets(problem, spread, air, cores);
        return new FieldSolution
        {
            AirInductanceH = Scaled(coils, (i, j) => air[i, j]),
            StaticInductanceH = Scaled(coils, (i, j) => air[i, j] + Even(cores, i, j)),
            InductanceSpreadH = Absolute(Scaled(coils, (i, j) => Even(spread, i, j))),
            SpectrumH = Spectrum(problem, air, system, sweep, middle, cancel),
            SpectrumSpreadH = SpectrumSpread(problem, system, sweep, spread),
            AirInductanceByBuildHPerM = byBuild,
            EffectiveAreaM2 = areas,
            AreaByBuildM2PerM = [.. coils.Select(AreaByBuild)],
            AreaSpreadM2 = [.. areas.Select((area, c) => Math.CopySign(areaSpread[c], area))],
            Map = new FieldMap(system, windings, charges, () => sweep.MagnetCharges(middle)),
            Notes = Notes(problem),
        };
    }

    private double[,] AirPerTurns(IReadOnlyList<FieldCoil> coils, out double[] byBuild)
    {
        double[,] air = new double[coils.Count, coils.Count];
        byBuild = new double[coils.Count];
        for (int i = 0; i < coils.Count; i++)
        {
            FieldCoil coil = coils[i];
            air[i, i] = AirInductance.SelfPerTurnSquaredH(coil.Bobbin, coil.BuildM, settings.Air);
            double step = 0.02 * coil.BuildM;
            byBuild[i] = coil.Turns * coil.Turns / (2 * step)
                * (AirInductance.SelfPerTurnSquaredH(coil.Bobbin, coil.BuildM + step, Resolution.Fast) - AirInductance.SelfPerTurnSquaredH(coil.Bobbin, coil.BuildM - step, Resolution.Fast));
            for (int j = 0; j < i; j++)
            {
                air[i, j] = air[j, i] = AirInductance.MutualPerTurnsH(coil, coils[j], settings.Air);
            }
        }

        return air;
    }

    /// <summary>Half-widths of 95 % per turns: each material's permeability in turn, and the stated error of the cores' share.</summary>
    private double[,] Spread(IReadOnlyList<FieldCoil> coils, CoreSweep sweep, SurfaceSystem system, double[] middle, double[,] cores, out double[] areas)
    {
        int n = cores.GetLength(0);
        double[] areaSquares = new double[n];
        double[,] squares = new double[n, n];
        double error = settings.CoreError + system.Materials.Select(material => material.ShapeError).DefaultIfEmpty().Max();
        void Add(Func<int, int, double> half)
        {
            for (int k = 0; k < squares.Length; k++)
            {
                squares[k / n, k % n] += Math.Pow(half(k / n, k % n), 2);
            }
        }

        Add((i, j) => error * cores[i, j]);
        for (int m = 0; m < middle.Length; m++)
        {
            Estimate mu = system.Materials[m].RelativePermeability;
            if (!mu.IsExact)
            {
                double[][] lowCharges = At(mu.Low, m), highCharges = At(mu.High, m);
                double[,] low = sweep.Linkage(lowCharges), high = sweep.Linkage(highCharges);
                Add((i, j) => (high[i, j] - low[i, j]) / 2);
                double[] lowAreas = Areas(coils, system, lowCharges), highAreas = Areas(coils, system, highCharges);
                for (int c = 0; c < n; c++)
                {
                    areaSquares[c] += Math.Pow((highAreas[c] - lowAreas[c]) / 2, 2);
                }
            }
        }

        for (int k = 0; k < squares.Length; k++)
        {
            squares[k / n, k % n] = Math.Sqrt(squares[k / n, k % n]);
        }

        areas = [.. areaSquares.Select(Math.Sqrt)];
        return squares;

        double[][] At(double mu, int m)
        {
            double[] changed = (double[])middle.Clone();
            changed[m] = Math.Max(1, mu);
            return sweep.Charges(changed);
        }
    }

    private static double AreaByBuild(FieldCoil coil)
    {
        double step = 0.01 * coil.BuildM;
        return coil.Sign * coil.Turns * (AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM + step) - AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM - step)) / (2 * step);
    }

    /// <summary>Half of what lies between all permeabilities at their upper and at their lower ends, brought to the size of the static spread.</summary>
    /// <remarks>From the same projection as the spectrum itself: losses do not move in step with the inductance, but about with the square of the permeability.</remarks>
    private static List<Complex[,]> SpectrumSpread(FieldProblem problem, SurfaceSystem system, CoreSweep sweep, double[,] spread)
    {
        int n = problem.Coils.Count;
        if (system.Count == 0 || problem.FrequenciesHz.Count == 0)
        {
            return [.. problem.FrequenciesHz.Select(_ => new Complex[n, n])];
        }

        Complex[,] At(Func<Estimate, double> end, double frequencyHz) => sweep.Linkage([.. system.Materials.Select(material => SkinEffect.Permeability(
            Math.Max(1, end(material.RelativePermeability)), material.ConductivitySPerM, material.Skin, material.HalfThicknessM, frequencyHz))]);

        Complex[,] Half(double frequencyHz)
        {
            Complex[,] high = At(mu => mu.High, frequencyHz), low = At(mu => mu.Low, frequencyHz), half = new Complex[n, n];
            for (int k = 0; k < half.Length; k++)
            {
                (int i, int j) = (k / n, k % n);
                half[i, j] = (high[i, j] + high[j, i] - low[i, j] - low[j, i]) / 4;
            }

            return half;
        }

        Complex[,] still = Half(LeastHz);
        List<Complex[,]> spreads = [];
        foreach (double frequencyHz in problem.FrequenciesHz)
        {
            Complex[,] half = Half(frequencyHz);
            for (int k = 0; k < half.Length; k++)
            {
                (int i, int j) = (k / n, k % n);
                double at = still[i, j].Real, wanted = Math.Abs(Even(spread, i, j));
                half[i, j] = (Math.Abs(at) > 0.02 * wanted ? half[i, j] * (wanted / Math.Abs(at)) : wanted) * Factor(problem.Coils, i, j);
            }

            spreads.Add(half);
        }

        return spreads;
    }

    /// <summary>What covers and plates may take, while they are not solved: a tenth of the whole.</summary>
    private static void AllowForSheets(FieldProblem problem, double[,] spread, double[,] air, double[,] cores)
    {
        int n = air.GetLength(0);
        for (int k = 0; k < air.Length && problem.Sheets.Count > 0; k++)
        {
            (int i, int j) = (k / n, k % n);
            spread[i, j] = Math.Sqrt(spread[i, j] * spread[i, j] + Math.Pow(0.1 * (Math.Abs(air[i, j]) + Math.Abs(cores[i, j])), 2));
        }
    }

    private List<Complex[,]> Spectrum(FieldProblem problem, double[,] air, SurfaceSystem system, CoreSweep sweep, double[] middle, CancellationToken cancel)
    {
        List<Complex[,]> spectrum = [];
        if (problem.FrequenciesHz.Count > 0 && system.Count > 0)
        {
            sweep.Project(middle, settings.Directions);
        }

        int n = problem.Coils.Count;
        foreach (double frequency in problem.FrequenciesHz)
        {
            cancel.ThrowIfCancellationRequested();
            Complex[] mu = [.. system.Materials.Select(material => SkinEffect.Permeability(
                material.RelativePermeability.Value, material.ConductivitySPerM, material.Skin, material.HalfThicknessM, frequency))];
            Complex[,] cores = system.Count > 0 ? sweep.Linkage(mu) : new Complex[n, n];
            Complex[,] total = new Complex[n, n];
            for (int k = 0; k < total.Length; k++)
            {
                (int i, int j) = (k / n, k % n);
                total[i, j] = (air[i, j] + (cores[i, j] + cores[j, i]) / 2) * Factor(problem.Coils, i, j);
            }

            spectrum.Add(total);
        }

        return spectrum;
    }

    /// <summary>Turns × area and the cores' dipole moment per ampere, by reciprocity what a uniform field along z links.</summary>
    private static double[] Areas(IReadOnlyList<FieldCoil> coils, SurfaceSystem system, double[][] charges)
    {
        double[] areas = new double[coils.Count];
        for (int c = 0; c < areas.Length; c++)
        {
            double area = AirInductance.MeanAreaM2(coils[c].Bobbin, coils[c].BuildM);
            for (int u = 0; u < system.Count; u++)
            {
                area += charges[c][u] * system.Weight[u] * system.Height[u];
            }

            areas[c] = coils[c].Sign * coils[c].Turns * area;
        }

        return areas;
    }

    private static List<FieldNote> Notes(FieldProblem problem) =>
        problem.Sheets.Count == 0 ? [] : [new FieldNote("metalwork", "covers and plates are not solved yet: they widen the inductance interval by 10 % and their loss is missing")];

    private static double Factor(IReadOnlyList<FieldCoil> coils, int i, int j) => coils[i].Turns * coils[i].Sign * coils[j].Turns * coils[j].Sign;

    /// <summary>Both halves of a matrix that is symmetric but for the cutting's error.</summary>
    private static double Even(double[,] matrix, int i, int j) => (matrix[i, j] + matrix[j, i]) / 2;

    private static double[,] Scaled(IReadOnlyList<FieldCoil> coils, Func<int, int, double> perTurns)
    {
        double[,] scaled = new double[coils.Count, coils.Count];
        for (int k = 0; k < scaled.Length; k++)
        {
            (int i, int j) = (k / coils.Count, k % coils.Count);
            scaled[i, j] = perTurns(i, j) * Factor(coils, i, j);
        }

        return scaled;
    }

    private static double[,] Absolute(double[,] matrix)
    {
        int n = matrix.GetLength(0);
        for (int k = 0; k < matrix.Length; k++)
        {
            matrix[k / n, k % n] = Math.Abs(matrix[k / n, k % n]);
        }

        return matrix;
    }
}
