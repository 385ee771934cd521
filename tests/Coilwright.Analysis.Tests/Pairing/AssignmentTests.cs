using System.Globalization;
using System.Text.Json;
using Coilwright.Analysis.Pairing;
using CsCheck;

namespace Coilwright.Analysis.Tests.Pairing;

/// <summary>Published assignment problems: tests/Reference/pairing/assignments.json, which names their sources.</summary>
public sealed class AssignmentTests
{
    private static readonly JsonElement s_reference = JsonDocument
        .Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "pairing", "assignments.json")))
        .RootElement;

    [Fact]
    public void Published_problems_reach_their_optimum()
    {
        Dictionary<string, Evidence> checks = new()
        {
            ["read"] = Evidence.Outside(
                "Assignments of least cost: published problems",
                "[Euler345]: tests/Reference/pairing",
                "read",
                "exact"
            ),
            ["memory"] = Evidence.Outside(
                "Assignments of least cost: recalled problems",
                "[Euler345] whole, and examples widely used to test the method: tests/Reference/pairing",
                "memory",
                "exact"
            ),
        };
        int held = 0;
        foreach (JsonElement problem in s_reference.GetProperty("assignments").EnumerateArray())
        {
            long[][] rows =
            [
                .. problem
                    .GetProperty("rows")
                    .EnumerateArray()
                    .Select(row => row.GetString()!.Split(' ').Select(cell => long.Parse(cell, CultureInfo.InvariantCulture)).ToArray()),
            ];
            int sign = problem.GetProperty("sense").GetString() == "max" ? -1 : 1;
            long[,] costs = new long[rows.Length, rows[0].Length];
            for (int row = 0; row < rows.Length; row++)
            {
                for (int column = 0; column < rows[0].Length; column++)
                {
                    costs[row, column] = sign * rows[row][column];
                }
            }

            Assignment answer = Assignment.LeastCost(costs);
            checks[problem.GetProperty("standing").GetString()!.StartsWith("read", StringComparison.Ordinal) ? "read" : "memory"]
                .Same(sign * answer.Total, problem.GetProperty("optimum").GetInt64(), problem.GetProperty("name").GetString()!);
            AssertProven(costs, answer);
            held++;
        }

        Assert.Equal(5, held);
        Assert.All(checks.Values, check => check.Record());
    }

    [Fact]
    public void Every_answer_is_proven_by_its_prices() =>
        Gen.Select(Gen.Int[1, 9], Gen.Int[1, 9])
            .SelectMany((rows, columns) => Gen.Long[-50, 50].Array2D[rows, columns])
            .ForAll(costs => AssertProven(costs, Assignment.LeastCost(costs)));

    [Fact]
    public void Trying_every_choice_finds_nothing_cheaper() =>
        Gen.Select(Gen.Int[1, 6], Gen.Int[1, 6])
            .SelectMany((rows, columns) => Gen.Long[-20, 20].Array2D[rows, columns])
            .ForAll(costs => Assignment.LeastCost(costs).Total == LeastByTrying(costs, 0, []));

    [Fact]
    public void A_cost_too_large_to_sum_exactly_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Assignment.LeastCost(
                new[,]
                {
                    { Assignment.LargestCost + 1 },
                }
            )
        );

    private static void AssertProven(long[,] costs, Assignment answer)
    {
        int rows = costs.GetLength(0),
            columns = costs.GetLength(1);
        int[] used = [.. answer.ColumnOfRow.Where(column => column >= 0)];
        Assert.Equal(Math.Min(rows, columns), used.Distinct().Count());
        Assert.Equal(used.Length, used.Distinct().Count());
        long total = 0;
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                long reduced = costs[row, column] - answer.RowPrices[row] - answer.ColumnPrices[column];
                Assert.True(reduced >= 0);
                if (answer.ColumnOfRow[row] == column)
                {
                    Assert.Equal(0, reduced);
                    total += costs[row, column];
                }
            }
        }

        Assert.Equal(total, answer.Total);
        // The side that has some left over gives price 0 to each of them, and no price above 0 to any.
        IReadOnlyList<long> longSide = rows > columns ? answer.RowPrices : answer.ColumnPrices;
        Assert.All(longSide, price => Assert.True(rows == columns || price <= 0));
        Assert.All(
            Enumerable.Range(0, longSide.Count).Where(place => rows > columns ? answer.ColumnOfRow[place] < 0 : !used.Contains(place)),
            place => Assert.Equal(0, longSide[place])
        );
    }

    private static long LeastByTrying(long[,] costs, int row, int[] used)
    {
        int rows = costs.GetLength(0),
            columns = costs.GetLength(1);
        if (row == rows)
        {
            return used.Length == Math.Min(rows, columns) ? 0 : long.MaxValue / 2;
        }

        long least = rows > columns ? LeastByTrying(costs, row + 1, used) : long.MaxValue / 2;
        foreach (int column in Enumerable.Range(0, columns).Except(used))
        {
            least = Math.Min(least, costs[row, column] + LeastByTrying(costs, row + 1, [.. used, column]));
        }

        return least;
    }
}
