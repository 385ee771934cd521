namespace Coilwright.Analysis.Pairing;

/// <summary>Gives rows to columns one row at a time, each along the cheapest path of exchanges. At most as many rows as columns.</summary>
internal sealed class AugmentingPaths(long[] costs, int rows, int columns)
{
    private const int BidsPerRow = 12;

    private readonly int[] _columnOf = Filled(rows),
        _rowOf = Filled(columns),
        _from = new int[columns],
        _open = new int[columns];
    private readonly long[] _rowPrice = new long[rows],
        _columnPrice = new long[columns],
        _distance = new long[columns],
        _rowDistance = new long[rows];
    private readonly bool[] _columnDone = new bool[columns];
    private readonly List<int> _reached = [];

    public Assignment Solve()
    {
        BidForColumns();
        for (int row = 0; row < rows; row++)
        {
            if (_columnOf[row] < 0)
            {
                Exchange(row, CheapestFreeColumn(row));
            }
        }

        long total = 0;
        for (int row = 0; row < rows; row++)
        {
            total += costs[row * columns + _columnOf[row]];
        }

        return new Assignment(_columnOf, total, _rowPrice, _columnPrice);
    }

    /// <summary>
    /// Rows bid for their cheapest column, up to the price of their second choice, and push one another out; most rows are placed here.
    /// The number of bids is bounded, since two rows that want much the same can outbid each other for long.
    /// </summary>
    private void BidForColumns()
    {
        Queue<int> free = new(Enumerable.Range(0, rows));
        for (int bids = BidsPerRow * rows; bids > 0 && free.TryDequeue(out int row); bids--)
        {
            (int first, long least, int second, long next) = TwoCheapest(row);
            if (least < next)
            {
                _columnPrice[first] -= next - least;
            }
            else if (_rowOf[first] >= 0)
            {
                first = second;
            }

            if (_rowOf[first] is >= 0 and int pushedOut)
            {
                _columnOf[pushedOut] = -1;
                free.Enqueue(pushedOut);
            }

            (_rowOf[first], _columnOf[row]) = (row, first);
        }

        for (int row = 0; row < rows; row++)
        {
            _rowPrice[row] = TwoCheapest(row).Least;
        }
    }

    private (int First, long Least, int Second, long Next) TwoCheapest(int row)
    {
        ReadOnlySpan<long> line = costs.AsSpan(row * columns, columns),
            prices = _columnPrice;
        (int first, int second, long least, long next) = (0, 0, long.MaxValue, long.MaxValue);
        for (int column = 0; column < line.Length; column++)
        {
            long cost = line[column] - prices[column];
            if (cost < next)
            {
                if (cost < least)
                {
                    (second, next) = (first, least);
                    (first, least) = (column, cost);
                }
                else
                {
                    (second, next) = (column, cost);
                }
            }
        }

        return columns == 1 ? (first, least, first, least) : (first, least, second, next);
    }

    /// <summary>
    /// Dijkstra over reduced costs from one row to the nearest free column; prices follow, so that reduced costs stay at or above 0.
    /// </summary>
    private int CheapestFreeColumn(int start)
    {
        int open = columns,
            free = -1,
            row = start;
        for (int column = 0; column < columns; column++)
        {
            (_open[column], _distance[column], _columnDone[column]) = (column, long.MaxValue, false);
        }

        _reached.Clear();
        long least = 0;
        while (free < 0)
        {
            _reached.Add(row);
            _rowDistance[row] = least;
            (int place, free) = Widen(row, least, open);
            int nearest = _open[place];
            least = _distance[nearest];
            _columnDone[nearest] = true;
            _open[place] = _open[--open];
            row = _rowOf[nearest];
        }

        foreach (int reached in _reached)
        {
            _rowPrice[reached] += least - _rowDistance[reached];
        }

        for (int column = 0; column < columns; column++)
        {
            _columnPrice[column] -= _columnDone[column] ? least - _distance[column] : 0;
        }

        return free;
    }

    /// <summary>
    /// Looks from a row at every column still open; gives the place of the nearest, and the column itself when it is free.
    /// </summary>
    private (int Place, int Free) Widen(int row, long least, int open)
    {
        ReadOnlySpan<long> line = costs.AsSpan(row * columns, columns);
        long offset = least - _rowPrice[row],
            lowest = long.MaxValue;
        int place = -1;
        for (int at = 0; at < open; at++)
        {
            int column = _open[at];
            long distance = offset + line[column] - _columnPrice[column];
            if (distance < _distance[column])
            {
                (_distance[column], _from[column]) = (distance, row);
            }
            else
            {
                distance = _distance[column];
            }

            if (distance < lowest || (distance == lowest && _rowOf[column] < 0))
            {
                (lowest, place) = (distance, at);
            }
        }

        return (place, _rowOf[_open[place]] < 0 ? _open[place] : -1);
    }

    private void Exchange(int start, int column)
    {
        for (int row = -1; row != start; )
        {
            row = _from[column];
            _rowOf[column] = row;
            (_columnOf[row], column) = (column, _columnOf[row]);
        }
    }

    private static int[] Filled(int length)
    {
        int[] array = new int[length];
        Array.Fill(array, -1);
        return array;
    }
}
