namespace Coilwright.Analysis.Pairing;

/// <summary>Rows given to columns, one each, at the least total cost, with the prices that prove it [Assignment].</summary>
/// <param name="ColumnOfRow">The column of each row; −1 for a row that is left when there are more rows than columns.</param>
/// <param name="Total">Sum of the chosen costs.</param>
/// <param name="RowPrices">Price of each row.</param>
/// <param name="ColumnPrices">Price of each column, never above 0.</param>
/// <remarks>
/// The answer proves itself: no cost lies below its row's price plus its column's price, chosen costs equal the sum, and a column that is
/// left has
/// price 0; so every other choice costs at least as much (duality of linear programming).
/// </remarks>
public sealed record Assignment(IReadOnlyList<int> ColumnOfRow, long Total, IReadOnlyList<long> RowPrices, IReadOnlyList<long> ColumnPrices)
{
    /// <summary>Largest cost, so that sums of many stay exact in 64 bits.</summary>
    public const long LargestCost = 1L << 50;

    /// <summary>
    /// The least total cost that gives every row a column of its own (or every column a row, when there are fewer columns).
    /// </summary>
    /// <param name="costs">Costs by row and column, from −2⁵⁰ to 2⁵⁰; whole numbers, so that the answer is exact.</param>
    /// <remarks>Shortest augmenting paths with prices: R. Jonker and A. Volgenant, Computing 38 (1987), from memory; of order n³.</remarks>
    public static Assignment LeastCost(long[,] costs)
    {
        int rows = costs.GetLength(0),
            columns = costs.GetLength(1);
        foreach (long cost in costs)
        {
            ArgumentOutOfRangeException.ThrowIfGreaterThan(cost, LargestCost, nameof(costs));
            ArgumentOutOfRangeException.ThrowIfLessThan(cost, -LargestCost, nameof(costs));
        }

        if (rows <= columns)
        {
            return new AugmentingPaths(Flat(costs, rows, columns, turned: false), rows, columns).Solve();
        }

        Assignment turned = new AugmentingPaths(Flat(costs, columns, rows, turned: true), columns, rows).Solve();
        int[] columnOfRow = new int[rows];
        Array.Fill(columnOfRow, -1);
        for (int column = 0; column < columns; column++)
        {
            columnOfRow[turned.ColumnOfRow[column]] = column;
        }

        return new Assignment(columnOfRow, turned.Total, turned.ColumnPrices, turned.RowPrices);
    }

    private static long[] Flat(long[,] costs, int rows, int columns, bool turned)
    {
        long[] flat = new long[rows * columns];
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                flat[row * columns + column] = turned ? costs[column, row] : costs[row, column];
            }
        }

        return flat;
    }
}
