namespace Coilwright.Analysis.Pairing;

/// <summary>One thing that could take a place: which thing it is, and its level.</summary>
/// <param name="Item">Number of the thing; the same thing may stand at several places' lists and is taken once.</param>
/// <param name="Level">Its level at that place, what is meant there taken off; on a scale where differences count, for example dB.</param>
public readonly record struct PlaceCandidate(int Item, double Level);

/// <summary>A set: one thing for each place.</summary>
/// <param name="Items">The things, in order of the places.</param>
/// <param name="Apart">Largest level minus smallest.</param>
public sealed record ClosestSet(IReadOnlyList<int> Items, double Apart);

/// <summary>One thing for each place so that all levels lie as close as can be: an exact search.</summary>
/// <remarks>
/// Branch and bound: a set that is begun can only spread, so it is left as soon as it is no closer than the worst one kept. The first found
/// of equals stays.
/// </remarks>
public sealed class ClosestSets
{
    private readonly PlaceCandidate[][] _places;
    private readonly int _most;
    private readonly List<ClosestSet> _kept = [];
    private readonly int[] _taken;

    private ClosestSets(PlaceCandidate[][] places, int most) => (_places, _most, _taken) = (places, most, new int[places.Length]);

    private double Bound => _kept.Count < _most ? double.PositiveInfinity : _kept[^1].Apart;

    /// <summary>The closest sets, the closest first; none when a place cannot be filled.</summary>
    /// <param name="places">Candidates of each place; of equals the earlier is taken.</param>
    /// <param name="most">How many sets are wanted, 1 or more.</param>
    public static IReadOnlyList<ClosestSet> Best(IReadOnlyList<IReadOnlyList<PlaceCandidate>> places, int most)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        ClosestSets search = new([.. places.Select(place => place.Where(one => double.IsFinite(one.Level)).ToArray())], most);
        search.Fill(0, double.PositiveInfinity, double.NegativeInfinity);
        return search._kept;
    }

    private void Fill(int place, double low, double high)
    {
        if (place == _places.Length)
        {
            Keep(high - low);
            return;
        }

        // Nearest first: what spreads the set no less than the bound ends the place.
        foreach (
            (PlaceCandidate one, double spread) in _places[place]
                .Select(one => (one, Math.Max(high, one.Level) - Math.Min(low, one.Level)))
                .OrderBy(pair => pair.Item2)
        )
        {
            if (spread >= Bound)
            {
                return;
            }

            if (Array.IndexOf(_taken, one.Item, 0, place) < 0)
            {
                _taken[place] = one.Item;
                Fill(place + 1, Math.Min(low, one.Level), Math.Max(high, one.Level));
            }
        }
    }

    private void Keep(double apart)
    {
        if (_places.Length == 0)
        {
            return;
        }

        int at = _kept.FindIndex(kept => kept.Apart > apart);
        _kept.Insert(at < 0 ? _kept.Count : at, new ClosestSet([.. _taken], apart));
        if (_kept.Count > _most)
        {
            _kept.RemoveAt(_most);
        }
    }
}
