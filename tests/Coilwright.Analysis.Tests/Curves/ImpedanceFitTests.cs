using System.Globalization;
using System.Numerics;
using Coilwright.Analysis.Curves;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Tests.Curves;

/// <summary>
/// Parts from measured impedances: on exact outside data, on simulated data of known truth, and where the data cannot tell.
/// </summary>
public sealed class ImpedanceFitTests
{
    [Fact]
    public void The_exact_coil_gives_back_its_parts_and_no_others()
    {
        // R = 8000 Ω, L = 4 H, C = 150 pF, made up outside this program; 8 decimals and 12 digits printed, frequencies to 1e-3 Hz.
        double[][] rows =
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "circuit", "exact-coil.csv"))
                .Skip(1)
                .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()),
        ];
        MeasuredCurve curve = new([.. rows.Select(row => row[0])]) { ImpedanceOhm = [.. rows.Select(row => new Complex(row[1], row[2]))] };
        CurveFit fit = ImpedanceFit.Fit(curve);
        Assert.True(fit.Fit.Converged);
        Assert.Equal(new PickupParts(0, false), fit.Parts);
        Assert.Empty(fit.Untold);
        Evidence
            .Outside(
                "Curve fit: R, L and C from the exact impedance of 8 kΩ, 4 H, 150 pF",
                "made outside this program from the formula: tests/Reference/circuit/exact-coil.csv",
                "derived",
                "rounding: of the printed frequencies, 5e-6 of themselves at 100 Hz"
            )
            .WithinPart(fit.Pickup.ResistanceOhm, 8000, 1e-6)
            .WithinPart(fit.Pickup.InductanceH, 4, 1e-6)
            .WithinPart(fit.Pickup.CapacitanceF, 150e-12, 1e-6)
            .Record();
    }

    [Theory]
    [InlineData(8000, 4, 1.5e-10, 6497.473343613968, 6489.671691798571, 6497.464009633776, 3337330.9419483626)]
    [InlineData(6000, 2.5, 1e-10, 10065.842420897407, 10058.592403407785, 10065.83721026396, 4169665.5889954157)]
    [InlineData(12000, 7, 3e-10, 3473.045590214284, 3462.312178070983, 3473.0127235169602, 1950435.2723628352)]
    public void Three_frequencies_called_resonance_are_kept_apart(
        double ohm,
        double henry,
        double farad,
        double undampedHz,
        double zeroPhaseHz,
        double topHz,
        double topOhm
    )
    {
        // Outside figures: analytic, checked on a grid there.
        ImpedanceResonance found = ImpedanceResonance.Find(new LumpedPickup(ohm, henry, farad));
        Evidence
            .Outside(
                FormattableString.Invariant($"Impedance: resonances of {ohm} Ω, {henry} H, {farad * 1e12:0} pF"),
                "analytic, checked on a grid outside this program",
                "derived",
                "method: a top is found by its height, to the root of its rounding"
            )
            .WithinPart(found.UndampedHz, undampedHz, 1e-9)
            .WithinPart(found.ZeroPhaseHz!.Value, zeroPhaseHz, 1e-7)
            .WithinPart(found.TopHz, topHz, 1e-6)
            .WithinPart(found.TopOhm, topOhm, 1e-9)
            .Record();
    }

    [Fact]
    public void Intervals_of_a_noisy_measurement_hold_the_truth_as_often_as_they_say()
    {
        LumpedPickup truth = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 60e3)] };
        Random random = new(77);
        double[] hz = PickupResponse.LogFrequencies(100, 20_000, 120);
        int trials = 200,
            chosen = 0;
        int[] inside = new int[5];
        double[] sum = new double[5],
            exact = [7800, 3.5, 120e-12, 0.9, 60e3];
        PickupParts parts = new(1, false);
        for (int trial = 0; trial < trials; trial++)
        {
            MeasuredCurve curve = Noisy(truth, hz, 0.005, random);
            CurveFit fit = ImpedanceFit.FitParts(curve, parts)!;
            chosen += trial < 20 && ImpedanceFit.Fit(curve).Parts == parts ? 1 : 0;
            for (int i = 0; i < 5; i++)
            {
                Estimate part = fit.Part(i);
                inside[i] += part.Low <= exact[i] && exact[i] <= part.High ? 1 : 0;
                sum[i] += Math.Log(part.Value / exact[i]) / trials;
            }
        }

        // 95 % of 200 is 190; 3.3 standard deviations of a binomial are 10.
        Assert.All(inside, count => Assert.InRange(count, 180, 200));
        Assert.All(sum, bias => Assert.Equal(0, bias, 0.01));
        Assert.True(chosen >= 17, $"the data chose the right parts {chosen} times of 20");
    }

    [Fact]
    public void Every_random_pickup_comes_back_from_its_own_exact_curve() =>
        Gen.Select(Gen.Double[2e3, 15e3], Gen.Double[1, 8], Gen.Double[60e-12, 300e-12], Gen.Double[0.1, 0.6], Gen.Double[0.5, 4])
            .ForAll(
                (ohm, henry, farad, share, knee) =>
                {
                    LumpedPickup truth = new(ohm, henry, farad) { Eddy = [new(share * henry, share * henry * 2 * Math.PI * 2000 * knee)] };
                    double[] hz = PickupResponse.LogFrequencies(50, 20_000, 200);
                    CurveFit fit = ImpedanceFit.Fit(Noisy(truth, hz, 0, new Random(1)));
                    return fit.Parts == new PickupParts(1, false)
                        && Math.Abs(fit.Pickup.InductanceH / henry - 1) < 1e-5
                        && Math.Abs(fit.Pickup.CapacitanceF / farad - 1) < 1e-5
                        && Math.Abs(fit.Pickup.Eddy[0].ResistanceOhm / truth.Eddy[0].ResistanceOhm - 1) < 1e-4;
                },
                count: 250,
                seeds: ["b0rHl1335B04", "d_47fTsWdrf4"]
            );

    [Fact]
    public void What_low_frequencies_cannot_tell_is_said()
    {
        LumpedPickup truth = new(7800, 3.5, 120e-12);
        CurveFit fit = ImpedanceFit.FitParts(
            Noisy(truth, PickupResponse.LogFrequencies(20, 200, 40), 0.003, new Random(5)),
            new PickupParts(0, false)
        )!;
        Assert.Contains(fit.Untold, untold => untold.Names.Contains("capacitance"));
        Assert.Equal(7800, fit.Part(PickupParts.Resistance).Value, 30.0);

        // Below its knee a branch is an inductance like the main one: only their sum is told.
        LumpedPickup eddy = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 3e6)] };
        CurveFit two = ImpedanceFit.FitParts(
            Noisy(eddy, PickupResponse.LogFrequencies(100, 5000, 100), 0.003, new Random(6)),
            new PickupParts(1, false)
        )!;
        Assert.Contains(two.Untold, untold => untold.Names.Any(name => name.StartsWith("eddy", StringComparison.Ordinal)));
        Estimate whole = two.Derived(pickup => pickup.ImpedanceOhm(300).Imaginary / (2 * Math.PI * 300));
        Assert.Equal(4.4, whole.Value, 0.02);
        Assert.True(whole.High - whole.Low < 0.1);
    }

    [Fact]
    public void A_gain_curve_gives_the_parts_only_with_a_known_resistance_or_a_known_resistive_load()
    {
        LumpedPickup truth = new(6200, 2.5, 120e-12);
        LoadCircuit probe = new() { CableCapacitanceF = 30e-12 };
        double[] hz = PickupResponse.LogFrequencies(200, 20_000, 200);
        Random random = new(8);
        MeasuredCurve curve = new(hz)
        {
            GainDb = [.. PickupResponse.Compute(truth, probe, hz).Points.Select(point => point.GainDb - 31 + 0.03 * Normal(random))],
        };
        CurveFit with = GainFit.Fit(curve, probe, 6200);
        Assert.Empty(with.Untold);
        Assert.Equal(1, with.Pickup.InductanceH / 2.5, 0.01);
        Assert.Equal(1, (with.Pickup.CapacitanceF + 30e-12) / 150e-12, 0.01);

        // R, L and 1/C can all grow together, but for the few picofarads of the probe.
        CurveFit without = GainFit.Fit(curve, new LoadCircuit(), null);
        Assert.Contains(without.Untold, untold =>
            untold.Names.Contains("inductance") && untold.Names.Contains("resistance") && untold.Names.Contains("capacitance")
        );
        Assert.Equal(8219, without.Derived(pickup => 1 / (2 * Math.PI * Math.Sqrt(pickup.InductanceH * pickup.CapacitanceF))).Value, 20.0);
    }

    private static MeasuredCurve Noisy(LumpedPickup truth, double[] hz, double relative, Random random) =>
        new(hz)
        {
            ImpedanceOhm =
            [
                .. hz.Select(one =>
                {
                    Complex series = truth.ImpedanceOhm(one),
                        z =
                            1
                            / (
                                1 / series
                                + new Complex(truth.ParallelLossOhm is { } loss ? 1 / loss : 0, 2 * Math.PI * one * truth.CapacitanceF)
                            );
                    return z + z.Magnitude * relative * new Complex(Normal(random), Normal(random));
                }),
            ],
        };

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
