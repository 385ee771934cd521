using System.Numerics;
using Coilwright.Physics.BoundaryElements.Metalwork;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>Windings by Neumann's integral, permeable parts by surface charge: both engines, at different settings.</summary>
internal sealed class SurfaceFieldEngine(FieldSettings settings)
{
    /// <summary>Slow enough for cores to follow without loss, Hz.</summary>
    private const double LeastHz = 1e-3;

    /// <summary>A breach of passivity this small is rounding.</summary>
    private const double Rounding = 1e-9;

    /// <summary>
    /// Solves a problem; what the cut leaves impossible is solved more finely, and what is impossible even then is moved to the nearest
    /// that is possible, and said.
    /// </summary>
    public FieldSolution Solve(FieldProblem problem, CancellationToken cancel)
    {
        FieldSettings fitting = settings.For(BodyFactory.RodsOf(problem));
        return (ReferenceEquals(fitting, settings) ? this : new SurfaceFieldEngine(fitting)).SolveChecked(problem, cancel);
    }

    private FieldSolution SolveChecked(FieldProblem problem, CancellationToken cancel)
    {
        FieldSolution solution = SolveOnce(problem, cancel);
        double breach = Passivity.Breach(solution),
            error = settings.CoreError;
        if (breach > settings.CoreError && settings.Finer is { } finer)
        {
            (FieldSolution again, error) = (new SurfaceFieldEngine(finer).SolveOnce(problem, cancel), finer.CoreError);
            (solution, breach) = (again, Passivity.Breach(again));
        }

        if (breach <= Rounding)
        {
            return solution;
        }

        FieldSolution nearest = Passivity.Nearest(solution);
        return breach <= error
            ? nearest
            : nearest with
            {
                Notes =
                [
                    .. nearest.Notes,
                    new FieldNote(
                        "coils",
                        "the field of these poles and bars lies beyond what the engine resolves: as cut, they would give power or take "
                            + "inductance away. Inductance and loss are the nearest that are possible, and their intervals are wider by "
                            + "what was moved; make sure of the parts' sizes and of the gaps between them"
                    ),
                ],
            };
    }

    private FieldSolution SolveOnce(FieldProblem problem, CancellationToken cancel)
    {
        IReadOnlyList<FieldCoil> coils = problem.Coils;
        List<MagneticBody> bodies = new BodyFactory(settings).Make(problem);
        CoilField[] windings = [.. coils.Select(coil => new CoilField(coil, settings.Layers, settings.ArcNodes))];
        SurfaceSystem system = new(bodies, BodyFactory.MirrorPlane(problem, bodies));
        (double[,] air, double[] byBuild, CoreSweep sweep) = Prepare(coils, windings, system, cancel);
        cancel.ThrowIfCancellationRequested();
        double[] middle = [.. system.Materials.Select(material => material.RelativePermeability.Value)];
        double[][] charges = sweep.Charges(middle);
        double[,] cores = sweep.Linkage(charges);
        SheetResponse? sheets = SheetResponse.Solve(problem, settings, windings, system, sweep, charges, cancel);
        CoreSweep full = sheets?.Sweep ?? sweep;
        if (
            system.Count > 0
            && (problem.FrequenciesHz.Count > 0 || system.Materials.Exists(material => !material.RelativePermeability.IsExact))
        )
        {
            full.Project(
                middle,
                (settings.Directions * coils.Count + settings.SheetDirections * (sheets?.Count ?? 0)) * system.Materials.Count
            );
        }

        double[,] spread = Spread(full, system, middle, cores, BodyFactory.Touch(bodies) ? settings.ContactError : 0);
        List<Dictionary<int, Complex[,]>> bySheet = [];
        double[] areas = HumArea.Compute(coils, system, charges);
        double[] coreSpread = [.. coils.Select((_, c) => Math.Abs(cores[c, c]) > 0 ? Math.Abs(spread[c, c] / cores[c, c]) : 0)];
        double drawn = problem.Sheets.Any(MagneticSheets.Draws) ? MagneticSheets.InductanceShare : 0,
            fieldError = problem.Bars.Count > 0 ? settings.FieldErrorWithBars : settings.FieldError;
        double Wide(int i, int j) => MagneticSheets.Widen(Even(spread, i, j), air[i, j] + Even(cores, i, j), drawn);
        double[] coresByBuild = [.. coils.Select((coil, c) => HumArea.CoresByBuild(coil, windings[c]))];
        return new FieldSolution
        {
            AirInductanceH = Scaled(coils, (i, j) => air[i, j]),
            StaticInductanceH = Scaled(coils, (i, j) => air[i, j] + Even(cores, i, j)),
            InductanceSpreadH = Absolute(Scaled(coils, Wide)),
            SpectrumH = Spectrum(problem, air, system, full, sheets, bySheet, cancel),
            SheetEffects = Effects(problem, bySheet),
            SpectrumSpreadH = Drawn(
                SpectrumSpread(problem, system, full, spread),
                Scaled(coils, (i, j) => air[i, j] + Even(cores, i, j)),
                drawn
            ),
            AirInductanceByBuildHPerM = byBuild,
            EffectiveAreaM2 = areas,
            AreaByBuildM2PerM = [.. areas.Select((area, c) => HumArea.ByBuild(coils[c], area, coresByBuild[c]))],
            AreaSpreadM2 = [.. areas.Select((area, c) => MagneticSheets.Widen(HumArea.Spread(coils[c], area, coreSpread[c]), area, drawn))],
            Gradient = GradientArea.Compute(
                coils,
                system,
                charges,
                [.. charges.Select(charge => sweep.Moves(charge, magnets: false))],
                settings.CoreError,
                coresByBuild,
                drawn
            ),
            Map = new FieldMap(
                system,
                windings,
                charges,
                () => sweep.MagnetCharges(middle),
                charge => [.. sweep.Moves(charge, magnets: true)],
                fieldError
            ),
            DrawnShare = MagneticSheets.FieldShare(problem),
            Notes = [.. SheetNotes.Describe(problem), .. BarNotes.Describe(problem), .. CutNotes.Describe(bodies)],
        };
    }

    /// <summary>
    /// What does not wait for each other, side by side: the windings' own inductance, their fields on the cores, and the cores' kernel.
    /// </summary>
    private (double[,] Air, double[] ByBuild, CoreSweep Sweep) Prepare(
        IReadOnlyList<FieldCoil> coils,
        CoilField[] windings,
        SurfaceSystem system,
        CancellationToken cancel
    )
    {
        double[,] air = new double[coils.Count, coils.Count];
        double[] byBuild = new double[coils.Count],
            kernel = [];
        (double[] Drive, double[] Potential)[] coupled = new (double[], double[])[coils.Count];
        IEnumerable<Action> airs = coils.Select((_, i) => (Action)(() => AddAir(coils, i, air, byBuild)));
        IEnumerable<Action> couplings = windings.Select((winding, i) => (Action)(() => coupled[i] = system.Couple(winding)));
        Parallel.Invoke(new ParallelOptions { CancellationToken = cancel }, [() => kernel = system.Kernel(cancel), .. couplings, .. airs]);
        return (air, byBuild, new CoreSweep(system, kernel, coupled, cancel));
    }

    private void AddAir(IReadOnlyList<FieldCoil> coils, int i, double[,] air, double[] byBuild)
    {
        FieldCoil coil = coils[i];
        air[i, i] = AirInductance.SelfPerTurnSquaredH(coil.Bobbin, coil.BuildM, settings.Air);
        byBuild[i] = AirByBuild(coil);
        for (int j = 0; j < i; j++)
        {
            air[i, j] = air[j, i] = AirInductance.MutualPerTurnsH(coil, coils[j], settings.Air);
        }
    }

    /// <summary>Change of a coil's own inductance without cores with its build, turns included, H/m.</summary>
    public static double AirByBuild(FieldCoil coil)
    {
        double step = 0.02 * coil.BuildM;
        return coil.Turns
            * coil.Turns
            / (2 * step)
            * (
                AirInductance.SelfPerTurnSquaredH(coil.Bobbin, coil.BuildM + step, Resolution.Fast)
                - AirInductance.SelfPerTurnSquaredH(coil.Bobbin, coil.BuildM - step, Resolution.Fast)
            );
    }

    /// <summary>Half-widths of 95 % per turns: each material's permeability in turn, and the stated error of the cores' share.</summary>
    private double[,] Spread(CoreSweep sweep, SurfaceSystem system, double[] middle, double[,] cores, double contact)
    {
        int n = cores.GetLength(0);
        double[,] squares = new double[n, n];
        double error = contact + settings.CoreError + system.Materials.Select(material => material.ShapeError).DefaultIfEmpty().Max();
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
                Complex[,] low = At(mu.Low, m),
                    high = At(mu.High, m);
                Add((i, j) => (high[i, j].Real - low[i, j].Real) / 2);
            }
        }

        for (int k = 0; k < squares.Length; k++)
        {
            squares[k / n, k % n] = Math.Sqrt(squares[k / n, k % n]);
        }

        return squares;

        Complex[,] At(double mu, int m)
        {
            Complex[] changed = [.. middle.Select(value => new Complex(value, 0))];
            changed[m] = Math.Max(1, mu);
            return sweep.Linkage(changed);
        }
    }

    /// <summary>
    /// Half of what lies between all permeabilities at their upper and at their lower ends, brought to the size of the static spread.
    /// </summary>
    /// <remarks>
    /// From the same projection as the spectrum itself: losses do not move in step with the inductance, but about with the square of the
    /// permeability.
    /// </remarks>
    private static List<Complex[,]> SpectrumSpread(FieldProblem problem, SurfaceSystem system, CoreSweep sweep, double[,] spread)
    {
        int n = problem.Coils.Count;
        if (system.Count == 0 || problem.FrequenciesHz.Count == 0)
        {
            return [.. problem.FrequenciesHz.Select(_ => new Complex[n, n])];
        }

        Complex[,] At(Func<Estimate, double> end, double frequencyHz) =>
            sweep.Linkage([
                .. system.Materials.Select(material =>
                    SkinEffect.Permeability(
                        Math.Max(1, end(material.RelativePermeability)),
                        material.ConductivitySPerM,
                        material.Skin,
                        material.HalfThicknessM,
                        frequencyHz
                    )
                ),
            ]);

        Complex[,] Half(double frequencyHz)
        {
            Complex[,] high = At(mu => mu.High, frequencyHz),
                low = At(mu => mu.Low, frequencyHz),
                half = new Complex[n, n];
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
                double at = still[i, j].Real,
                    wanted = Math.Abs(Even(spread, i, j));
                half[i, j] = (Math.Abs(at) > 0.02 * wanted ? half[i, j] * (wanted / Math.Abs(at)) : wanted) * Factor(problem.Coils, i, j);
            }

            spreads.Add(half);
        }

        return spreads;
    }

    /// <summary>The real part widened by a share of the static inductance; losses are left as they are.</summary>
    private static List<Complex[,]> Drawn(List<Complex[,]> spreads, double[,] whole, double share)
    {
        int n = whole.GetLength(0);
        for (int k = 0; k < spreads.Count * n * n && share > 0; k++)
        {
            Complex[,] spread = spreads[k / (n * n)];
            (int i, int j) = (k / n % n, k % n);
            spread[i, j] = new Complex(MagneticSheets.Widen(spread[i, j].Real, whole[i, j], share), spread[i, j].Imaginary);
        }

        return spreads;
    }

    /// <summary>L − jR/ω between the windings at each frequency, turns included, H.</summary>
    public static List<Complex[,]> Spectrum(
        FieldProblem problem,
        double[,] air,
        SurfaceSystem system,
        CoreSweep sweep,
        SheetResponse? sheets,
        List<Dictionary<int, Complex[,]>> bySheet,
        CancellationToken cancel
    )
    {
        List<Complex[,]> spectrum = [];
        int n = problem.Coils.Count,
            sources = n + (sheets?.Count ?? 0);
        foreach (double frequency in problem.FrequenciesHz)
        {
            cancel.ThrowIfCancellationRequested();
            Complex[] mu =
            [
                .. system.Materials.Select(material =>
                    SkinEffect.Permeability(
                        material.RelativePermeability.Value,
                        material.ConductivitySPerM,
                        material.Skin,
                        material.HalfThicknessM,
                        frequency
                    )
                ),
            ];
            Complex[,] cores = system.Count > 0 ? sweep.Linkage(mu) : new Complex[sources, sources];
            Dictionary<int, Complex[,]> changes = [];
            Complex[,] total = sheets?.Inductance(air, cores, frequency, changes) ?? Without(air, cores);
            bySheet.Add(changes.ToDictionary(pair => pair.Key, pair => Scaled(problem.Coils, pair.Value)));
            spectrum.Add(Scaled(problem.Coils, total));
        }

        return spectrum;
    }

    private static Complex[,] Without(double[,] air, Complex[,] cores)
    {
        int n = air.GetLength(0);
        Complex[,] total = new Complex[n, n];
        for (int k = 0; k < total.Length; k++)
        {
            (int i, int j) = (k / n, k % n);
            total[i, j] = air[i, j] + (cores[i, j] + cores[j, i]) / 2;
        }

        return total;
    }

    private static Complex[,] Scaled(IReadOnlyList<FieldCoil> coils, Complex[,] perTurns)
    {
        int n = coils.Count;
        Complex[,] scaled = new Complex[n, n];
        for (int k = 0; k < n * n; k++)
        {
            scaled[k / n, k % n] = perTurns[k / n, k % n] * Factor(coils, k / n, k % n);
        }

        return scaled;
    }

    private static List<SheetEffect> Effects(FieldProblem problem, List<Dictionary<int, Complex[,]>> bySheet) =>
        bySheet.Count == 0
            ? []
            :
            [
                .. bySheet[0]
                    .Keys.Order()
                    .Select(index => new SheetEffect(index, problem.Sheets[index], [.. bySheet.Select(at => at[index])])),
            ];

    private static double Factor(IReadOnlyList<FieldCoil> coils, int i, int j) =>
        coils[i].Turns * coils[i].Sign * coils[j].Turns * coils[j].Sign;

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
