namespace Coilwright.Analysis.Pairing;

/// <content>Closing, opening and passing through blossoms.</content>
internal sealed partial class BlossomSearch
{
    private void Enqueue(int blossom)
    {
        if (blossom <= _count)
        {
            _outer.Enqueue(blossom);
            return;
        }

        foreach (int part in _flower[blossom])
        {
            Enqueue(part);
        }
    }

    private void SetTop(int blossom, int top)
    {
        _top[blossom] = top;
        if (blossom > _count)
        {
            foreach (int part in _flower[blossom])
            {
                SetTop(part, top);
            }
        }
    }

    /// <summary>Place of a part in its blossom, turned so that the way from the base to it is even.</summary>
    private int EvenPlace(int blossom, int part)
    {
        List<int> parts = _flower[blossom];
        int place = parts.IndexOf(part);
        if (place % 2 == 0)
        {
            return place;
        }

        parts.Reverse(1, parts.Count - 1);
        return parts.Count - place;
    }

    private void SetMatch(int blossom, int to)
    {
        int edge = At(blossom, to);
        _match[blossom] = _v[edge];
        if (blossom <= _count)
        {
            return;
        }

        int part = _flowerFrom[blossom * (_count + 1) + _u[edge]],
            place = EvenPlace(blossom, part);
        List<int> parts = _flower[blossom];
        for (int at = 0; at < place; at++)
        {
            SetMatch(parts[at], parts[at ^ 1]);
        }

        SetMatch(part, to);
        _flower[blossom] = [.. parts.Skip(place), .. parts.Take(place)];
    }

    private void Augment(int from, int to)
    {
        while (true)
        {
            int next = _top[_match[from]];
            SetMatch(from, to);
            if (next == 0)
            {
                return;
            }

            SetMatch(next, _top[_parent[next]]);
            (from, to) = (_top[_parent[next]], next);
        }
    }

    private int CommonRoot(int a, int b)
    {
        for (_round++; a != 0 || b != 0; (a, b) = (b, a))
        {
            if (a == 0)
            {
                continue;
            }

            if (_seen[a] == _round)
            {
                return a;
            }

            _seen[a] = _round;
            a = _top[_match[a]];
            a = a == 0 ? 0 : _top[_parent[a]];
        }

        return 0;
    }

    /// <summary>Shrinks an odd circle of outer blossoms into one.</summary>
    private void Close(int from, int root, int to)
    {
        int made = _count + 1;
        while (made <= _used && _top[made] != 0)
        {
            made++;
        }

        _used = Math.Max(_used, made);
        (_price[made], _side[made], _match[made]) = (0, 0, _match[root]);
        List<int> parts = [root];
        AddBranch(parts, from, root);
        parts.Reverse(1, parts.Count - 1);
        AddBranch(parts, to, root);
        _flower[made] = parts;
        SetTop(made, made);
        KeepBestEdges(made);
        FindSlack(made);
    }

    private void AddBranch(List<int> parts, int from, int root)
    {
        for (int outer = from; outer != root; )
        {
            int inner = _top[_match[outer]];
            parts.Add(outer);
            parts.Add(inner);
            Enqueue(inner);
            outer = _top[_parent[inner]];
        }
    }

    private void KeepBestEdges(int made)
    {
        for (int other = 1; other <= _used; other++)
        {
            (_weight[At(made, other)], _weight[At(other, made)]) = (0, 0);
        }

        Array.Clear(_flowerFrom, made * (_count + 1), _count + 1);
        foreach (int part in _flower[made])
        {
            for (int other = 1; other <= _used; other++)
            {
                if (_weight[At(part, other)] > 0 && (_weight[At(made, other)] == 0 || Slack(At(part, other)) < Slack(At(made, other))))
                {
                    Copy(At(part, other), At(made, other));
                    Copy(At(other, part), At(other, made));
                }
            }

            for (int vertex = 1; vertex <= _count; vertex++)
            {
                if (_flowerFrom[part * (_count + 1) + vertex] != 0)
                {
                    _flowerFrom[made * (_count + 1) + vertex] = part;
                }
            }
        }
    }

    private void Copy(int edge, int into) => (_u[into], _v[into], _weight[into]) = (_u[edge], _v[edge], _weight[edge]);

    /// <summary>Takes a spent inner blossom apart again; its parts on the tree's path stay in the tree.</summary>
    private void Open(int blossom)
    {
        foreach (int part in _flower[blossom])
        {
            SetTop(part, part);
        }

        int entry = _flowerFrom[blossom * (_count + 1) + _u[At(blossom, _parent[blossom])]],
            place = EvenPlace(blossom, entry);
        List<int> parts = _flower[blossom];
        for (int at = 0; at < place; at += 2)
        {
            int inner = parts[at],
                outer = parts[at + 1];
            _parent[inner] = _u[At(outer, inner)];
            (_side[inner], _side[outer], _slack[inner]) = (1, 0, 0);
            FindSlack(outer);
            Enqueue(outer);
        }

        (_side[entry], _parent[entry]) = (1, _parent[blossom]);
        for (int at = place + 1; at < parts.Count; at++)
        {
            _side[parts[at]] = -1;
            FindSlack(parts[at]);
        }

        _top[blossom] = 0;
    }
}
