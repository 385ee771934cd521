using Coilwright.Analysis.Pairing;
using CsCheck;

namespace Coilwright.Analysis.Tests.Pairing;

public sealed class ClosestSetsTests
{
    [Fact]
    public void Trying_every_set_finds_none_closer_and_the_ranks_are_the_same() =>
        Gen.Select(Gen.Int[2, 4], Gen.Int[1, 4], Gen.Bool)
            .SelectMany(
                (places, most, shared) =>
                    Gen.Select(
                        Gen.Select(Gen.Int[0, 9], Gen.Double[-3, 3], (item, level) => new PlaceCandidate(item, Math.Round(level, 1)))
                            .Array[0, 6]
                            .Array[places],
                        Gen.Const(most),
                        Gen.Const(shared)
                    )
            )
            .ForAll(
                (lists, most, shared) =>
                {
                    // Things of one place alone, or things that could take several places; each stands once in a list.
                    PlaceCandidate[][] places =
                    [
                        .. lists.Select(
                            (list, place) =>
                                list.DistinctBy(one => one.Item)
                                    .Select(one => shared ? one : one with { Item = one.Item + 100 * place })
                                    .ToArray()
                        ),
                    ];
                    double[] tried =
                    [
                        .. Every(places).Select(set => set.Max(one => one.Level) - set.Min(one => one.Level)).Order().Take(most),
                    ];
                    IReadOnlyList<ClosestSet> found = ClosestSets.Best(places, most);
                    Assert.Equal(tried.Length, found.Count);
                    Assert.All(found.Zip(tried), pair => Assert.Equal(pair.Second, pair.First.Apart, 12));
                    Assert.All(found, set => Assert.Equal(set.Items.Count, set.Items.Distinct().Count()));
                }
            );

    [Fact]
    public void Of_equals_the_first_is_taken_and_many_equals_take_no_time()
    {
        PlaceCandidate[][] places =
        [
            .. Enumerable
                .Range(0, 4)
                .Select(place =>
                    Enumerable.Range(0, 300).Select(item => new PlaceCandidate(1000 * place + item, 0.25 * (item % 2))).ToArray()
                ),
        ];
        Assert.Equal([0, 1000, 2000, 3000], ClosestSets.Best(places, 3)[0].Items); // 8,100,000,000 sets
    }

    [Fact]
    public void A_place_that_cannot_be_filled_leaves_no_set() =>
        Assert.Empty(
            ClosestSets.Best(
                [
                    [new PlaceCandidate(1, 0)],
                    [new PlaceCandidate(1, 0), new PlaceCandidate(2, double.NaN)],
                ],
                3
            )
        ); // the same thing twice, or a level not known

    private static IEnumerable<PlaceCandidate[]> Every(PlaceCandidate[][] places) =>
        places.Aggregate(
            (IEnumerable<PlaceCandidate[]>)
                [
                    [],
                ],
            (sets, place) =>
                sets.SelectMany(set =>
                    place.Where(one => set.All(other => other.Item != one.Item)).Select(one => (PlaceCandidate[])[.. set, one])
                )
        );
}
