using System.Globalization;
using System.Text.Json;
using Coilwright.Analysis.Pairing;
using CsCheck;

namespace Coilwright.Analysis.Tests.Pairing;

/// <summary>Published test graphs: tests/Reference/pairing/graphs.json, which names their source.</summary>
public sealed class GeneralMatchingTests
{
    private static readonly JsonElement s_reference = JsonDocument
        .Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "pairing", "graphs.json")))
        .RootElement;

    [Fact]
    public void Published_graphs_reach_their_greatest_and_least_weights()
    {
        Evidence check = Evidence.Outside(
            "Free pairing: most and least weight of published test graphs",
            "tests of networkx after J. van Rantwijk, least weights by full enumeration: tests/Reference/pairing [Blossom]",
            "read",
            "exact"
        );
        int held = 0;
        foreach (JsonElement graph in s_reference.GetProperty("graphs").EnumerateArray())
        {
            WeightedPair[] edges = [.. graph.GetProperty("edges").GetString()!.Split(' ').Select(Edge)];
            int vertices = graph.GetProperty("vertices").GetInt32();
            IReadOnlyList<WeightedPair> most = GeneralMatching.MostWeight(vertices, edges),
                least = GeneralMatching.LeastWeight(vertices, edges);
            check.Same(most.Sum(pair => pair.Weight), graph.GetProperty("most").GetInt64(), graph.GetProperty("name").GetString()!);
            Assert.Equal(graph.GetProperty("pairs").GetInt32(), least.Count);
            check.Same(
                least.Sum(pair => pair.Weight),
                graph.GetProperty("leastAtMostPairs").GetInt64(),
                graph.GetProperty("name").GetString()!
            );
            AssertPairs(most, edges);
            AssertPairs(least, edges);
            held++;
        }

        Assert.Equal(s_reference.GetProperty("graphs").GetArrayLength(), held);
        check.Record();
    }

    [Fact]
    public void Trying_every_choice_finds_nothing_heavier() =>
        Graphs(7)
            .ForAll(
                graph =>
                    GeneralMatching.MostWeight(7, graph).Sum(pair => pair.Weight) == Everything(graph, 0, []).Max(choice => choice.Weight),
                count: 2000
            );

    [Fact]
    public void Trying_every_choice_finds_no_lighter_one_of_as_many_pairs() =>
        Graphs(8)
            .ForAll(
                graph =>
                {
                    IReadOnlyList<WeightedPair> least = GeneralMatching.LeastWeight(8, graph);
                    (int Pairs, long Weight)[] all = [.. Everything(graph, 0, [])];
                    int pairs = all.Max(choice => choice.Pairs);
                    return least.Count == pairs
                        && least.Sum(pair => pair.Weight) == all.Where(choice => choice.Pairs == pairs).Min(choice => choice.Weight);
                },
                count: 1000
            );

    [Fact] // a set of points on a line: neighbours belong together, whatever the search does
    public void Points_on_a_line_are_paired_with_their_neighbours() =>
        Gen.Long[0, 1_000_000]
            .Array[2, 60]
            .Where(points => points.Length % 2 == 0)
            .ForAll(
                points =>
                {
                    Array.Sort(points);
                    WeightedPair[] all =
                    [
                        .. from a in Enumerable.Range(0, points.Length)
                        from b in Enumerable.Range(a + 1, points.Length - a - 1)
                        select new WeightedPair(a, b, points[b] - points[a]),
                    ];
                    return GeneralMatching.LeastWeight(points.Length, all).Sum(pair => pair.Weight)
                        == Enumerable.Range(0, points.Length / 2).Sum(pair => points[2 * pair + 1] - points[2 * pair]);
                },
                count: 200
            );

    private static Gen<WeightedPair[]> Graphs(int vertices) =>
        Gen.Select(Gen.Int[0, vertices - 1], Gen.Int[0, vertices - 1], Gen.Long[-3, 12], (a, b, weight) => new WeightedPair(a, b, weight))
            .Where(pair => pair.A != pair.B)
            .Array[0, 14]
            .Select(pairs => pairs.DistinctBy(pair => (Math.Min(pair.A, pair.B), Math.Max(pair.A, pair.B))).ToArray());

    private static void AssertPairs(IReadOnlyList<WeightedPair> chosen, WeightedPair[] edges)
    {
        Assert.All(chosen, pair => Assert.Contains(pair, edges));
        int[] ends = [.. chosen.SelectMany(pair => (int[])[pair.A, pair.B])];
        Assert.Equal(ends.Length, ends.Distinct().Count());
    }

    private static IEnumerable<(int Pairs, long Weight)> Everything(WeightedPair[] edges, int from, int[] used)
    {
        yield return (0, 0);
        for (int at = from; at < edges.Length; at++)
        {
            WeightedPair edge = edges[at];
            if (used.Contains(edge.A) || used.Contains(edge.B))
            {
                continue;
            }

            foreach ((int pairs, long weight) in Everything(edges, at + 1, [.. used, edge.A, edge.B]))
            {
                yield return (pairs + 1, weight + edge.Weight);
            }
        }
    }

    private static WeightedPair Edge(string text)
    {
        long[] parts =
        [
            .. text.Replace(":", " ", StringComparison.Ordinal)
                .Split(' ')
                .SelectMany((part, place) => place == 0 ? part.Split('-') : [part])
                .Select(part => long.Parse(part, CultureInfo.InvariantCulture)),
        ];
        return new WeightedPair((int)parts[0] - 1, (int)parts[1] - 1, parts[2]);
    }
}
