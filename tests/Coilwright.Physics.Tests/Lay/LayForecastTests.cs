using Coilwright.Physics.Winding;
using LayKind = Coilwright.Physics.Winding.Lay;

namespace Coilwright.Physics.Tests.Lay;

public sealed class LayForecastTests(ITestOutputHelper output)
{
    [Fact] // The recipe makes the stored nodes again, to half of the last stored digit (and the float's own).
    public void Stored_nodes_come_out_of_the_recipe()
    {
        int[] layers = [0, 1, 2, 3];
        for (int p = 0; p < LaySurfaceRecipe.PitchNodes.Count; p++)
        {
            for (int j = p % 3; j < LaySurfaceRecipe.JitterNodes.Count; j += 3)
            {
                int l = layers[(p + j) % layers.Length];
                LayNode made = LaySurfaceRecipe.Node(
                    LaySurfaceRecipe.PitchNodes[p],
                    LaySurfaceRecipe.JitterNodes[j],
                    LaySurfaceRecipe.LayerNodes[l]
                );
                LayNode stored = LaySurface.Node(p, j, l);
                Assert.Equal(made.Packing, stored.Packing, 5.1e-5);
                Assert.Equal(made.Touching, stored.Touching, 5.1e-5);
                Assert.Equal(made.Near, stored.Near, 5.1e-5);
            }
        }
    }

    // Random wires, windows and lays away from the nodes, other enamels and wax. Measured against single sections: 0.018 and 11 % at worst.
    [Fact]
    public void Quick_follows_the_simulation_for_scattered_lays()
    {
        SectionRandom random = new(2024);
        double worstPacking = 0;
        List<double> errors = [];
        for (int i = 0; i < 60; i++)
        {
            double Between(double low, double high) => low + (high - low) * random.NextUniform();
            double bareM = Between(40e-6, 90e-6);
            double overallM = bareM * Between(1.08, 1.2);
            double heightM = Between(6e-3, 14e-3);
            int turns = (int)(Between(8, 60) * heightM / overallM);
            LaySpec spec = new(overallM, heightM, turns, Between(1.3, 6) * overallM, Between(0.5, 5) * overallM);
            double enamel = Between(2.5, 4.5);
            double gap = Between(1, 2.5);
            LaidSection section = LaySimulation.Run(spec, random.NextBits());
            double simulatedF = LayCapacitance.SelfCapacitanceF(section, bareM, overallM, enamel, gap, 0.14);
            LayEstimate quick = LayForecast.Quick(
                bareM,
                overallM,
                enamel,
                gap,
                heightM,
                0.14,
                turns,
                LayKind.Scattered,
                spec.PitchM,
                spec.JitterM
            );
            worstPacking = Math.Max(worstPacking, Math.Abs(quick.PackingFactor.Value - section.PackingFactor));
            errors.Add(quick.CapacitanceF.Value / simulatedF - 1);
        }

        output.WriteLine(
            FormattableString.Invariant(
                $"packing worst {worstPacking:f4}; capacitance mean {errors.Average():f4}, worst {errors.Max(Math.Abs):f4}"
            )
        );
        Assert.InRange(worstPacking, 0, 0.03);
        Assert.InRange(errors.Max(Math.Abs), 0, 0.12);
        Assert.InRange(Math.Sqrt(errors.Average(e => e * e)), 0, 0.05);
    }

    [Fact] // Without wander the result hangs on how the passes fit the window; the surface gives the middle.
    public void Quick_follows_the_simulation_for_even_lays()
    {
        List<double> packing = [];
        List<double> errors = [];
        for (int i = 0; i < 40; i++)
        {
            double heightM = 8e-3 + i * 0.1e-3;
            LaidSection section = LaySimulation.Run(new(71.1e-6, heightM, 5000, LayForecast.EvenPitchRatio * 71.1e-6, 0), 1);
            double simulatedF = LayCapacitance.SelfCapacitanceF(section, 63.5e-6, 71.1e-6, 3.5, 1, 0.14);
            LayEstimate quick = LayForecast.Quick(63.5e-6, 71.1e-6, 3.5, 1, heightM, 0.14, 5000, LayKind.Even, null, null);
            packing.Add(quick.PackingFactor.Value - section.PackingFactor);
            errors.Add(quick.CapacitanceF.Value / simulatedF - 1);
        }

        output.WriteLine(
            FormattableString.Invariant(
                $"packing worst {packing.Max(Math.Abs):f4}; capacitance mean {errors.Average():f4}, worst {errors.Max(Math.Abs):f4}"
            )
        );
        Assert.InRange(packing.Max(Math.Abs), 0, 0.03);
        Assert.InRange(errors.Max(Math.Abs), 0, 0.10);
    }

    [Fact]
    public void Every_input_moves_the_forecast()
    {
        double[] baseline = [63.5e-6, 71.1e-6, 3.5, 1, 11e-3, 0.142, 8000, 0.15e-3, 0.1e-3];
        double Capacitance(double[] v) =>
            LayForecast.Quick(v[0], v[1], v[2], v[3], v[4], v[5], v[6], LayKind.Scattered, v[7], v[8]).CapacitanceF.Value;
        for (int k = 0; k < baseline.Length; k++)
        {
            double[] moved = [.. baseline];
            moved[k] *= 1.05;
            Assert.True(Math.Abs(Capacitance(moved) / Capacitance(baseline) - 1) > 1e-4, $"input {k}");
        }
    }

    [Fact]
    public void Intervals_hold_their_value_and_stay_below_the_densest_packing() =>
        Gen.Select(Gen.Double[0.3, 12], Gen.Double[0, 12], Gen.Double[1, 1e5])
            .ForAll(
                (pitch, jitter, turns) =>
                {
                    LayEstimate e = LayForecast.Quick(
                        63.5e-6,
                        71.1e-6,
                        3.5,
                        1,
                        11e-3,
                        0.14,
                        turns,
                        LayKind.Scattered,
                        pitch * 71.1e-6,
                        jitter * 71.1e-6
                    );
                    return e.PackingFactor.Low < e.PackingFactor.Value
                        && e.PackingFactor.Value < e.PackingFactor.High
                        && e.PackingFactor.High <= Math.PI / Math.Sqrt(12)
                        && e.CapacitanceF.Low <= e.CapacitanceF.Value
                        && double.IsFinite(e.CapacitanceF.High);
                }
            );
}
