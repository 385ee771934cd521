namespace Coilwright.Analysis.Pairing;

/// <summary>Matching of greatest weight in a general graph, by Edmonds' blossoms with prices.</summary>
/// <remarks>
/// J. Edmonds, J. Res. NBS 69B (1965), in the form that keeps one best edge between every two blossoms, of order n³ in time and n² in room
/// (Z. Galil, ACM Computing Surveys 18, 1986); both from memory. Checked against full enumeration, published test graphs and a proof by
/// prices.
/// Vertices are 1 to n and blossoms above; 0 means none. The file keeps the order in which the method is usually told, so it is longer than
/// most.
/// </remarks>
internal sealed partial class BlossomSearch
{
    private readonly int _count,
        _room;
    private readonly int[] _u,
        _v,
        _match,
        _slack,
        _top,
        _parent,
        _seen,
        _flowerFrom;
    private readonly long[] _weight,
        _price;
    private readonly sbyte[] _side; // −1 not reached, 0 outer, 1 inner
    private readonly List<int>[] _flower;
    private readonly Queue<int> _outer = new();
    private int _used,
        _round;

    /// <param name="count">Number of vertices.</param>
    public BlossomSearch(int count)
    {
        _count = count;
        _room = count + count / 2 + 2; // odd circles of outer vertices: never more than n/2 at once
        _u = new int[_room * _room];
        _v = new int[_room * _room];
        _weight = new long[_room * _room];
        _flowerFrom = new int[_room * (count + 1)];
        (_match, _slack, _top, _parent, _seen) = (new int[_room], new int[_room], new int[_room], new int[_room], new int[_room]);
        (_price, _side) = (new long[_room], new sbyte[_room]);
        _flower = [.. Enumerable.Range(0, _room).Select(_ => new List<int>())];
        for (int a = 1; a <= count; a++)
        {
            for (int b = 1; b <= count; b++)
            {
                (_u[At(a, b)], _v[At(a, b)]) = (a, b);
            }
        }
    }

    /// <summary>States an edge between two vertices, counted from 0; its weight is above 0.</summary>
    public void Join(int a, int b, long weight) => (_weight[At(a + 1, b + 1)], _weight[At(b + 1, a + 1)]) = (weight, weight);

    /// <summary>The partner of each vertex, both counted from 0; −1 for one that is left.</summary>
    public int[] Solve()
    {
        _used = _count;
        long heaviest = _weight.Length == 0 ? 0 : _weight.Max();
        for (int vertex = 1; vertex <= _count; vertex++)
        {
            _top[vertex] = vertex;
            _flowerFrom[vertex * (_count + 1) + vertex] = vertex;
            _price[vertex] = heaviest;
        }

        while (FindPath()) { }

        return [.. Enumerable.Range(1, _count).Select(vertex => _match[vertex] - 1)];
    }

    private int At(int a, int b) => a * _room + b;

    /// <summary>How far an edge is from being usable; 0 when it is.</summary>
    private long Slack(int edge) => _price[_u[edge]] + _price[_v[edge]] - 2 * _weight[At(_u[edge], _v[edge])];

    private void NoteSlack(int vertex, int blossom)
    {
        if (_slack[blossom] == 0 || Slack(At(vertex, blossom)) < Slack(At(_slack[blossom], blossom)))
        {
            _slack[blossom] = vertex;
        }
    }

    private void FindSlack(int blossom)
    {
        _slack[blossom] = 0;
        for (int vertex = 1; vertex <= _count; vertex++)
        {
            if (_weight[At(vertex, blossom)] > 0 && _top[vertex] != blossom && _side[_top[vertex]] == 0)
            {
                NoteSlack(vertex, blossom);
            }
        }
    }

    /// <summary>One search: true when the matching grew by a pair, false when nothing more can be gained.</summary>
    private bool FindPath()
    {
        Array.Fill(_side, (sbyte)-1, 1, _used);
        Array.Clear(_slack, 1, _used);
        _outer.Clear();
        for (int blossom = 1; blossom <= _used; blossom++)
        {
            if (_top[blossom] == blossom && _match[blossom] == 0)
            {
                (_parent[blossom], _side[blossom]) = (0, 0);
                Enqueue(blossom);
            }
        }

        if (_outer.Count == 0)
        {
            return false;
        }

        while (true)
        {
            if (GrowTrees())
            {
                return true;
            }

            if (!MovePrices(LargestStep()))
            {
                return false;
            }

            _outer.Clear();
            if (UseTightEdges())
            {
                return true;
            }

            OpenSpentBlossoms();
        }
    }

    private bool GrowTrees()
    {
        while (_outer.TryDequeue(out int from))
        {
            if (_side[_top[from]] == 1)
            {
                continue;
            }

            for (int to = 1; to <= _count; to++)
            {
                int edge = At(from, to);
                if (_weight[edge] <= 0 || _top[from] == _top[to])
                {
                    continue;
                }

                if (Slack(edge) != 0)
                {
                    NoteSlack(from, _top[to]);
                }
                else if (UseEdge(edge))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private long LargestStep()
    {
        long step = long.MaxValue;
        for (int blossom = _count + 1; blossom <= _used; blossom++)
        {
            step = _top[blossom] == blossom && _side[blossom] == 1 ? Math.Min(step, _price[blossom] / 2) : step;
        }

        for (int blossom = 1; blossom <= _used; blossom++)
        {
            if (_top[blossom] == blossom && _slack[blossom] != 0 && _side[blossom] != 1)
            {
                long slack = Slack(At(_slack[blossom], blossom));
                step = Math.Min(step, _side[blossom] == 0 ? slack / 2 : slack);
            }
        }

        return step;
    }

    /// <summary>
    /// Moves the prices of all trees by a step; false when a free vertex's price would reach 0, where nothing more is gained.
    /// </summary>
    private bool MovePrices(long step)
    {
        for (int vertex = 1; vertex <= _count; vertex++)
        {
            if (_side[_top[vertex]] == 0)
            {
                if (_price[vertex] <= step)
                {
                    return false;
                }

                _price[vertex] -= step;
            }
            else if (_side[_top[vertex]] == 1)
            {
                _price[vertex] += step;
            }
        }

        for (int blossom = _count + 1; blossom <= _used; blossom++)
        {
            if (_top[blossom] == blossom && _side[blossom] >= 0)
            {
                _price[blossom] += _side[blossom] == 0 ? 2 * step : -2 * step;
            }
        }

        return true;
    }

    private bool UseTightEdges()
    {
        for (int blossom = 1; blossom <= _used; blossom++)
        {
            if (
                _top[blossom] == blossom
                && _slack[blossom] != 0
                && _top[_slack[blossom]] != blossom
                && Slack(At(_slack[blossom], blossom)) == 0
                && UseEdge(At(_slack[blossom], blossom))
            )
            {
                return true;
            }
        }

        return false;
    }

    private void OpenSpentBlossoms()
    {
        for (int blossom = _count + 1; blossom <= _used; blossom++)
        {
            if (_top[blossom] == blossom && _side[blossom] == 1 && _price[blossom] == 0)
            {
                Open(blossom);
            }
        }
    }

    private bool UseEdge(int edge)
    {
        int from = _top[_u[edge]],
            to = _top[_v[edge]];
        if (_side[to] == -1)
        {
            (_parent[to], _side[to]) = (_u[edge], 1);
            int next = _top[_match[to]];
            (_slack[to], _slack[next], _side[next]) = (0, 0, 0);
            Enqueue(next);
        }
        else if (_side[to] == 0)
        {
            int root = CommonRoot(from, to);
            if (root == 0)
            {
                Augment(from, to);
                Augment(to, from);
                return true;
            }

            Close(from, root, to);
        }

        return false;
    }
}
