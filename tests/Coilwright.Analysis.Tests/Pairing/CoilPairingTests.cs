using Coilwright.Analysis.Pairing;
using CsCheck;

namespace Coilwright.Analysis.Tests.Pairing;

public sealed class CoilPairingTests
{
    private static readonly PairingPreference[] s_plain = [new()];

    [Fact] // arithmetic from the stated ohms; a difference is a part of the smaller value
    public void Four_slug_and_four_screw_coils_pair_as_stated()
    {
        PairingCoil[] coils = [.. Family("slug", 4.05, 3.92, 4.11, 3.98), .. Family("screw", 3.95, 4.12, 4.01, 4.06)];
        PairingAnswer answer = CoilPairing.Best(coils, s_plain);
        double[] percent = [.. answer.Pairs.OrderBy(pair => coils[pair.A].Values[0]).Select(pair => 100 * pair.Difference)];
        Assert.Equal([0.765, 0.754, 0.247, 0.243], percent.Select(one => Math.Round(one, 3)));
        Assert.Empty(answer.Left);
        Assert.Equal(
            5.1,
            100
                * (
                    from slug in coils.Take(4)
                    from screw in coils.Skip(4)
                    select new PairingPreference().Difference(slug.Values[0], screw.Values[0])
                ).Max(),
            0.05
        );
    }

    [Theory] // arithmetic: 20·log10(difference/sum)
    [InlineData(5010, -60)]
    [InlineData(5050, -46)]
    [InlineData(5150, -37)]
    [InlineData(5500, -26)]
    public void Residual_hum_follows_from_the_turns(double turns, double expectedDb) =>
        Assert.Equal(expectedDb, HumResidue.LevelDb(5000, turns), 0.5);

    [Fact]
    public void An_intended_offset_is_met_and_not_avoided()
    {
        PairingCoil[] coils = [.. Family("slug", 5000, 5100), .. Family("screw", 5000, 5150, 5250)];
        PairingAnswer answer = CoilPairing.Best(coils, [new PairingPreference(Offset: 150)]);
        Assert.Equal([(0, 3), (1, 4)], answer.Pairs.Select(pair => (pair.A, pair.B)));
        Assert.Equal(0, answer.Total, 1e-15);
        Assert.Equal([2], answer.Left);
    }

    [Fact]
    public void A_coil_whose_value_is_not_known_is_left() =>
        Assert.Equal([1, 2], CoilPairing.Best([.. Family("main", 5, double.NaN, 9, 5.1)], s_plain).Left);

    [Fact] // a different method: coils kept in order of value, every choice of who is left by dynamic programming
    public void Two_families_by_one_quantity_agree_with_pairing_in_order() =>
        Gen.Select(Ohms(1, 12), Ohms(1, 12))
            .ForAll(
                (few, many) =>
                {
                    double total = CoilPairing.Best([.. Family("a", few), .. Family("b", many)], s_plain).Total;
                    return Math.Abs(total - InOrder(few, many)) < 1e-9;
                }
            );

    [Fact] // the neighbours' rule against the general search, which a second quantity that counts nothing brings in
    public void Free_pairing_by_neighbours_agrees_with_the_search() =>
        Ohms(1, 15)
            .ForAll(values =>
            {
                double neighbours = CoilPairing.Best([.. Family("main", values)], s_plain).Total;
                PairingCoil[] twice = [.. values.Select((value, place) => new PairingCoil($"{place}", "main", [value, 1]))];
                double searched = 2 * CoilPairing.Best(twice, [new PairingPreference(), new PairingPreference()]).Total;
                return Math.Abs(neighbours - searched) < 1e-9;
            });

    [Fact]
    public void Free_pairing_with_an_offset_pairs_coils_that_differ_by_it()
    {
        PairingAnswer answer = CoilPairing.Best([.. Family("main", 5150, 5000, 5300, 5450)], [new PairingPreference(Offset: 150)]);
        Assert.Equal(0, answer.Total, 1e-15);
        Assert.All(answer.Pairs, pair => Assert.Equal(0, pair.Difference, 1e-15));
        Assert.Equal([(1, 0), (2, 3)], answer.Pairs.Select(pair => (pair.A, pair.B))); // the coil with fewer turns first
    }

    [Fact]
    public void The_order_of_the_list_does_not_change_the_total() =>
        Gen.Select(Ohms(2, 8), Ohms(2, 8), Gen.Int[0, 1000])
            .ForAll(
                (a, b, seed) =>
                {
                    PairingCoil[] coils = [.. Family("a", a), .. Family("b", b)],
                        shuffled = [.. coils];
                    new Random(seed).Shuffle(shuffled);
                    return Math.Abs(CoilPairing.Best(coils, s_plain).Total - CoilPairing.Best(shuffled, s_plain).Total) < 1e-9;
                }
            );

    private static Gen<double[]> Ohms(int least, int most) => Gen.Double[3900, 4200].Array[least, most];

    private static IEnumerable<PairingCoil> Family(string family, params double[] values) =>
        values.Select((value, place) => new PairingCoil($"{family}-{place + 1}", family, [value]));

    private static double InOrder(double[] one, double[] other)
    {
        double[] few = [.. (one.Length <= other.Length ? one : other).Order()],
            many = [.. (one.Length <= other.Length ? other : one).Order()];
        double[] best = new double[many.Length + 1];
        for (int row = 0; row < few.Length; row++)
        {
            double[] next = [.. Enumerable.Repeat(double.PositiveInfinity, many.Length + 1)];
            for (int column = row; column < many.Length; column++)
            {
                next[column + 1] = Math.Min(next[column], best[column] + new PairingPreference().Difference(few[row], many[column]));
            }

            best = next;
        }

        return best[many.Length];
    }
}
