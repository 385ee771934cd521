using System.Globalization;
using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Analysis.Tests.Diagnosis;

/// <summary>Are causes called 80 % right four times in five?</summary>
public sealed class CalibrationTests(ITestOutputHelper output)
{
    [Fact]
    public void Of_the_causes_called_eighty_per_cent_about_eighty_per_cent_are_right()
    {
        const int Seed = 20260314,
            Batches = 1500,
            Coils = 10;
        SimulatedShop shop = new(Seed);
        List<(double Called, bool Right)> calls = [];
        for (int batch = 0; batch < Batches; batch++)
        {
            IReadOnlyList<(string Cause, CoilEvidence Evidence)> coils = shop.Batch(Coils);
            IReadOnlyList<CoilDiagnosis> found = CauseFinder.FindAll([.. coils.Select(coil => coil.Evidence)]);
            calls.AddRange(
                coils.Zip(found).SelectMany(pair => pair.Second.Causes.Select(cause => (cause.Probability, cause.Name == pair.First.Cause)))
            );
        }

        foreach (double from in (double[])[0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.85, 0.95])
        {
            (double Called, bool Right)[] bin = [.. calls.Where(call => call.Called >= from && call.Called < from + 0.1)];
            output.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"seed {Seed}: called {from:0.00} to {from + 0.1:0.00}: {bin.Length}, mean {bin.Average(c => c.Called):0.000}, "
                        + $"right {bin.Average(c => c.Right ? 1.0 : 0):0.000}"
                )
            );
        }

        (double Called, bool Right)[] eighty = [.. calls.Where(call => call.Called is >= 0.75 and < 0.85)];
        double right = eighty.Count(call => call.Right) / (double)eighty.Length;
        Assert.True(eighty.Length >= 150, $"only {eighty.Length} calls: the check would be too blunt");
        Evidence
            .Own(
                "Causes called 75 to 85 %: how many are right",
                "simulated shops with known truth: 1,500 batches of 10 coils, seeded [FaultRates]",
                "chance: three standard errors of 500 calls are 5 %"
            )
            .Inside(100 * right, 75, 85, "%")
            .Record(FormattableString.Invariant($"of {eighty.Length}"));
    }
}
