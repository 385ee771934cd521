using System.Numerics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Physics.Tests.Circuit;

public sealed class TabulatedBranchTests
{
    private static readonly LumpedPickup s_steel = new(7800, 3.5, 120e-12) { Eddy = [new(0.9, 60e3), new(0.3, 8e3)] };

    [Fact]
    public void It_passes_through_its_entries_and_is_constant_outside()
    {
        TabulatedBranch branch = new([100, 1000, 10_000], [4.4, 4.2, 3.1], [7800, 7900, 12_000]);
        Assert.Equal(4.2, branch.ImpedanceOhm(1000).Imaginary / (2 * Math.PI * 1000), 1e-12);
        Assert.Equal(7900, branch.ImpedanceOhm(1000).Real, 1e-9);
        Assert.Equal(4.4, branch.ImpedanceOhm(20).Imaginary / (2 * Math.PI * 20), 1e-12);
        Assert.Equal(12_000, branch.ImpedanceOhm(50_000).Real, 1e-9);
        Assert.Equal(3.1, branch.ImpedanceOhm(10_000).Imaginary / (2 * Math.PI * 10_000), 1e-12);
    }

    [Fact]
    public void Between_two_entries_it_never_leaves_them() =>
        Gen.Select(Gen.Double[0.1, 10].Array[6], Gen.Double[1e3, 1e5].Array[6], Gen.Double[0, 1])
            .ForAll(
                (henry, ohm, where) =>
                {
                    double[] hz = [20, 120, 500, 1000, 3000, 20_000];
                    TabulatedBranch branch = new(hz, henry, ohm);
                    for (int i = 0; i < 5; i++)
                    {
                        double at = hz[i] * Math.Pow(hz[i + 1] / hz[i], where);
                        Complex z = branch.ImpedanceOhm(at);
                        Inside(henry[i], henry[i + 1], z.Imaginary / (2 * Math.PI * at));
                        Inside(ohm[i], ohm[i + 1], z.Real);
                    }
                }
            );

    [Fact]
    public void A_table_of_a_lumped_pickup_gives_its_response()
    {
        double[] hz = PickupResponse.LogFrequencies(20, 40_000, 40);
        Complex[] z = [.. hz.Select(s_steel.ImpedanceOhm)];
        TabulatedBranch branch = new(
            hz,
            [.. z.Select((value, i) => value.Imaginary / (2 * Math.PI * hz[i]))],
            [.. z.Select(value => value.Real)]
        );
        LoadCircuit load = new()
        {
            Volume = new(500e3, 1),
            CableCapacitanceF = 500e-12,
            InputResistanceOhm = 1e6,
        };
        double[] band = PickupResponse.LogFrequencies(20, 20_000, 300);
        Response exact = PickupResponse.Compute(s_steel, load, band),
            table = PickupResponse.Compute(branch, 120e-12, null, load, band);
        Assert.All(Enumerable.Range(0, band.Length), i => Assert.Equal(exact.Points[i].GainDb, table.Points[i].GainDb, 0.02));
        double expected = PickupResponse.FindPeak(s_steel, load)!.Value.FrequencyHz;
        Assert.Equal(expected, PickupResponse.FindPeak(branch, 120e-12, null, load)!.Value.FrequencyHz, 1e-4 * expected);
    }

    [Fact]
    public void One_entry_is_a_plain_coil()
    {
        double[] band = PickupResponse.LogFrequencies(20, 20_000, 30);
        Response table = PickupResponse.Compute(new TabulatedBranch([1000], [2.5], [6200]), 120e-12, null, LoadCircuit.None, band);
        Response lumped = PickupResponse.Compute(new LumpedPickup(6200, 2.5, 120e-12), LoadCircuit.None, band);
        Assert.All(Enumerable.Range(0, band.Length), i => Assert.Equal(lumped.Points[i].GainDb, table.Points[i].GainDb, 1e-9));
    }

    [Fact]
    public void Broken_tables_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new TabulatedBranch([], [], []));
        Assert.Throws<ArgumentException>(() => new TabulatedBranch([100, 200], [1], [1, 1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TabulatedBranch([200, 100], [1, 1], [1, 1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TabulatedBranch([100, 100], [1, 1], [1, 1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TabulatedBranch([100, 200], [1, double.NaN], [1, 1]));
    }

    private static void Inside(double a, double b, double value) =>
        Assert.InRange(value, Math.Min(a, b) * (1 - 1e-12), Math.Max(a, b) * (1 + 1e-12));
}
