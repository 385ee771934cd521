using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Strings;

namespace Coilwright.Analysis.Forecasts;

/// <summary>Draws the curves of <see cref="PickupPictures"/> from a solved scene.</summary>
internal static class PictureMaker
{
    private const int FieldPoints = 161;
    private const int AcrossPoints = 25;
    private const int BranchPoints = 121;
    private const double BeyondM = 0.006;

    /// <summary>Amplitude for the overtones, m, while the clearance allows it.</summary>
    private const double AmplitudeM = 1e-3;

    /// <summary>How well clearances are alike from string to string, m: the nut and the frets, common practice, no source.</summary>
    private const double UnevenM = 1e-4;

    public static PickupPictures Make(PickupModel model, ForecastScene scene, TabulatedBranch branch, CancellationToken cancel)
    {
        PickupPictures pictures = new()
        {
            Branch =
            [
                .. PickupResponse
                    .LogFrequencies(20, 20_000, BranchPoints)
                    .Select(hz => (hz, branch.ImpedanceOhm(hz).Imaginary / (2 * Math.PI * hz), branch.ImpedanceOhm(hz).Real)),
            ],
        };
        if (scene.Strings is not { } strings || model.Strings is not { } set)
        {
            return pictures;
        }

        double amplitude = Math.Min(AmplitudeM, 0.4 * set.ClearanceM);
        return pictures with
        {
            Fields = FieldsOf(model, scene, strings, set),
            Across = AcrossOf(model, strings, set, cancel),
            Along = AlongOf(strings, set),
            Strings = DetailsOf(strings, set, amplitude, cancel),
            AmplitudeM = amplitude,
        };
    }

    private static IReadOnlyList<FieldLine> FieldsOf(PickupModel model, ForecastScene scene, StringsOver strings, StringSetModel set)
    {
        double half = ReachM(model, set),
            height = strings.AxisM(set.Count / 2);
        return
        [
            .. model
                .Coils.Select(coil => coil.Position.YM)
                .Distinct()
                .Order()
                .Select(y => new FieldLine(
                    y,
                    height,
                    [
                        .. Enumerable
                            .Range(0, FieldPoints)
                            .Select(i => half * (2.0 * i / (FieldPoints - 1) - 1))
                            .Select(x => (x, scene.Field.Map.MagnetFluxDensityT(new Vector3M(x, y, height)).ZM)),
                    ]
                )),
        ];
    }

    private static double ReachM(PickupModel model, StringSetModel set) =>
        BeyondM
        + model
            .Coils.SelectMany(coil => coil.Poles.SelectMany(pole => pole.PositionsM.Select(x => Math.Abs(x + coil.Position.XM))))
            .Append(Math.Abs(set.XM(0)))
            .Max();

    private static (double, double)[] AcrossOf(PickupModel model, StringsOver strings, StringSetModel set, CancellationToken cancel)
    {
        double half = ReachM(model, set);
        int middle = set.Count / 2;
        (double, double)[] line = new (double, double)[AcrossPoints];
        bool mirrored = IsMirroredInX(model);
        Parallel.For(0, mirrored ? (AcrossPoints + 1) / 2 : AcrossPoints, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            double x = half * (2.0 * i / (AcrossPoints - 1) - 1);
            line[i] = (x, -strings.Scene.Solve(set.Strings[middle], x, strings.AxisM(middle), sideways: false).VerticalWbPerM);
            if (mirrored)
            {
                line[AcrossPoints - 1 - i] = (-x, line[i].Item2);
            }
        });
        return line;
    }

    /// <summary>True when magnets, poles and windings are their own mirror image in the plane x = 0.</summary>
    private static bool IsMirroredInX(PickupModel model) =>
        model.Coils.All(coil => Math.Abs(coil.Position.XM) < 1e-9 && coil.Poles.All(IsMirroredInX))
        && model.Bars.All(bar => Math.Abs(bar.CentreM.XM) < 1e-9 && Math.Abs(bar.PolarisationT.XM) <= 0);

    private static bool IsMirroredInX(PoleModel pole)
    {
        (double X, double Top)[] ascending = [.. pole.PositionsM.Zip(pole.TopsM).OrderBy(one => one.First)];
        return ascending
            .Zip(ascending.Reverse())
            .All(pair => Math.Abs(pair.First.X + pair.Second.X) < 1e-7 && Math.Abs(pair.First.Top - pair.Second.Top) < 1e-7);
    }

    /// <summary>Aperture of the middle string over its whole, mirrored where half a string was solved.</summary>
    private static List<(double, double)> AlongOf(StringsOver strings, StringSetModel set)
    {
        StringAnswer answer = strings.Answers[set.Count / 2];
        StringGrid grid = answer.Magnetised.Grid;
        double whole = answer.Aperture.Zip(grid.WeightM, (g, weight) => g * weight).Sum();
        if (!(Math.Abs(whole) > 0))
        {
            return [];
        }

        List<(double YM, double SharePerM)> line = [.. grid.YM.Zip(answer.Aperture, (y, g) => (y, g / whole))];
        return grid.IsHalf ? [.. line.Skip(1).Reverse().Select(point => (2 * grid.YM[0] - point.YM, point.SharePerM)), .. line] : line;
    }

    private static StringDetail[] DetailsOf(StringsOver strings, StringSetModel set, double amplitude, CancellationToken cancel)
    {
        double[][] overtones = new double[set.Count + 1][]; // the last: the middle string a little higher
        Parallel.For(0, overtones.Length, new ParallelOptions { CancellationToken = cancel }, k =>
        {
            int i = k < set.Count ? k : set.Count / 2;
            double z = strings.AxisM(i) + (k < set.Count ? 0 : UnevenM);
            overtones[k] = StringMotion.Harmonics(up => strings.Scene.LinkageWb(set.Strings[i], set.XM(i), z + up), amplitude);
        });
        double mean = strings.Answers.Average(answer => Math.Abs(answer.VerticalWbPerM));
        IReadOnlyList<double> tuning = UsualStrings.TuningHz(set.Count, set.SpacingM);
        Estimate Overtone(int i, int m) => Around(overtones[i][m], overtones[^1][m], overtones[set.Count / 2][m]);
        return
        [
            .. strings.Answers.Select(
                (answer, i) =>
                {
                    Estimate pull = Factor(answer.PullN, strings.PullSpread);
                    return new StringDetail(
                        i + 1,
                        Balance(answer, mean, strings),
                        pull,
                        Pitch(strings, set, i, pull, tuning[i]),
                        Overtone(i, 0),
                        Overtone(i, 1)
                    );
                }
            ),
        ];
    }

    private static Estimate Balance(StringAnswer answer, double mean, StringsOver strings)
    {
        double db = mean > 0 && Math.Abs(answer.VerticalWbPerM) > 0 ? 20 * Math.Log10(Math.Abs(answer.VerticalWbPerM) / mean) : -120;
        double half = 20 / Math.Log(10) * Math.Abs(strings.Trends.SensitivityPerM) * UnevenM;
        return new Estimate(db, db - half, db + half, Basis.Forecast);
    }

    private static Estimate? Pitch(StringsOver strings, StringSetModel set, int i, Estimate pull, double hz)
    {
        if (!(set.ScaleLengthM > 0.05) || !(set.FromBridgeM > 0))
        {
            return null;
        }

        double tension = StringMotion.TensionN(set.Strings[i], set.ScaleLengthM, hz);
        double At(double newton) => StringMotion.PitchShift(-strings.PullPerM * newton, tension, set.ScaleLengthM, set.FromBridgeM);
        double one = At(pull.Low),
            other = At(pull.High);
        return new Estimate(At(pull.Value), Math.Min(one, other), Math.Max(one, other), Basis.Forecast);
    }

    private static Estimate Factor(double value, double logSpread)
    {
        double a = value * Math.Exp(-logSpread),
            b = value * Math.Exp(logSpread);
        return new Estimate(value, Math.Min(a, b), Math.Max(a, b), Basis.Forecast);
    }

    /// <summary>As far about a value as the middle string's moves when it is set higher.</summary>
    private static Estimate Around(double value, double higher, double middle) =>
        Factor(value, middle > 0 && higher > 0 ? Math.Abs(Math.Log(higher / middle)) : 0);
}
