namespace Coilwright.Analysis.Pairing;

/// <summary>Pairs the coils at hand: as many pairs as can be, and of those choices the one with the least sum of differences.</summary>
/// <remarks>
/// Two families are an assignment, one family is a matching in a general graph; both are solved exactly on differences rounded to 10⁻¹² of
/// the largest,
/// so that the total lies within (number of pairs) × 10⁻¹² of it of the least. One quantity without an offset inside one family needs no
/// search:
/// neighbours in order of value belong together, since the difference grows faster than evenly with the distance of the logarithms.
/// </remarks>
public static class CoilPairing
{
    /// <summary>Most coils in one family when a free pairing has to be searched; beyond it the search takes minutes.</summary>
    public const int MostSearchedFreely = 2000;

    /// <summary>Most coils of two families together.</summary>
    public const int MostInTwoFamilies = 10_000;

    private const double Steps = 1e12;

    /// <summary>The best pairing.</summary>
    /// <param name="coils">Coils of one or two families.</param>
    /// <param name="wishes">One for each of the coils' values.</param>
    /// <exception cref="ArgumentException">More than two families, or values that do not fit the wishes.</exception>
    public static PairingAnswer Best(IReadOnlyList<PairingCoil> coils, IReadOnlyList<PairingPreference> wishes)
    {
        if (coils.Any(coil => coil.Values.Count != wishes.Count || coil.Values.Any(value => value <= 0)))
        {
            throw new ArgumentException("Every coil needs one value above 0 for each wish.", nameof(coils));
        }

        int[] known = [.. Enumerable.Range(0, coils.Count).Where(place => !coils[place].Values.Any(double.IsNaN))];
        int[][] families =
        [
            .. coils
                .Select(coil => coil.Family)
                .Distinct(StringComparer.Ordinal)
                .Select(family => known.Where(place => coils[place].Family == family).ToArray()),
        ];
        List<CoilPair> pairs = families.Length switch
        {
            0 => [],
            1 => Within(coils, wishes, families[0]),
            2 => Across(coils, wishes, families[0], families[1]),
            _ => throw new ArgumentException("Coils of one or two families can be paired.", nameof(coils)),
        };
        HashSet<int> paired = [.. pairs.SelectMany(pair => (int[])[pair.A, pair.B])];
        pairs.Sort((one, other) => one.A.CompareTo(other.A));
        return new PairingAnswer(
            pairs,
            [.. Enumerable.Range(0, coils.Count).Where(place => !paired.Contains(place))],
            pairs.Sum(pair => pair.Difference)
        );
    }

    private static List<CoilPair> Across(
        IReadOnlyList<PairingCoil> coils,
        IReadOnlyList<PairingPreference> wishes,
        int[] first,
        int[] second
    )
    {
        // In order of value most rows find their column at once; the answer does not depend on it.
        int[] rows = [.. first.OrderBy(place => coils[place].Values[0])],
            columns = [.. second.OrderBy(place => coils[place].Values[0])];
        double[,] differences = new double[rows.Length, columns.Length];
        double largest = 0;
        for (int row = 0; row < rows.Length; row++)
        {
            for (int column = 0; column < columns.Length; column++)
            {
                differences[row, column] = Difference(coils[rows[row]], coils[columns[column]], wishes);
                largest = Math.Max(largest, differences[row, column]);
            }
        }

        long[,] costs = new long[rows.Length, columns.Length];
        for (int row = 0; row < rows.Length; row++)
        {
            for (int column = 0; column < columns.Length; column++)
            {
                costs[row, column] = Whole(differences[row, column], largest);
            }
        }

        IReadOnlyList<int> columnOf = Assignment.LeastCost(costs).ColumnOfRow;
        return
        [
            .. Enumerable
                .Range(0, rows.Length)
                .Where(row => columnOf[row] >= 0)
                .Select(row => new CoilPair(rows[row], columns[columnOf[row]], differences[row, columnOf[row]])),
        ];
    }

    private static List<CoilPair> Within(IReadOnlyList<PairingCoil> coils, IReadOnlyList<PairingPreference> wishes, int[] places) =>
        wishes.Count == 1 && !wishes[0].HasOffset ? Neighbours(coils, wishes, places) : Searched(coils, wishes, places);

    private static List<CoilPair> Searched(IReadOnlyList<PairingCoil> coils, IReadOnlyList<PairingPreference> wishes, int[] places)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(places.Length, MostSearchedFreely, nameof(coils));
        List<CoilPair> possible = [];
        for (int a = 0; a < places.Length; a++)
        {
            for (int b = a + 1; b < places.Length; b++)
            {
                PairingCoil one = coils[places[a]],
                    other = coils[places[b]];
                double forward = Difference(one, other, wishes),
                    backward = Difference(other, one, wishes);
                possible.Add(forward <= backward ? new CoilPair(a, b, forward) : new CoilPair(b, a, backward));
            }
        }

        double largest = possible.Select(pair => pair.Difference).DefaultIfEmpty(0).Max();
        Dictionary<(int, int), CoilPair> byEnds = possible.ToDictionary(pair => (pair.A, pair.B));
        return
        [
            .. GeneralMatching
                .LeastWeight(places.Length, [.. possible.Select(pair => new WeightedPair(pair.A, pair.B, Whole(pair.Difference, largest)))])
                .Select(pair => new CoilPair(places[pair.A], places[pair.B], byEnds[(pair.A, pair.B)].Difference)),
        ];
    }

    /// <summary>Neighbours in order of value; with an odd count the coil whose absence costs least is left.</summary>
    private static List<CoilPair> Neighbours(IReadOnlyList<PairingCoil> coils, IReadOnlyList<PairingPreference> wishes, int[] places)
    {
        int[] order = [.. places.OrderBy(place => coils[place].Values[0])];
        int left = order.Length % 2 == 0 ? order.Length : BestLeft(coils, wishes, order);
        int[] kept = [.. order.Where((_, at) => at != left)];
        List<CoilPair> pairs = [];
        for (int at = 0; at + 1 < kept.Length; at += 2)
        {
            (int a, int b) = (Math.Min(kept[at], kept[at + 1]), Math.Max(kept[at], kept[at + 1]));
            pairs.Add(new CoilPair(a, b, Difference(coils[a], coils[b], wishes)));
        }

        return pairs;
    }

    private static int BestLeft(IReadOnlyList<PairingCoil> coils, IReadOnlyList<PairingPreference> wishes, int[] order)
    {
        double Gap(int at) => Difference(coils[order[at]], coils[order[at + 1]], wishes);
        double total = Enumerable.Range(0, order.Length / 2).Sum(pair => Gap(2 * pair + 1)),
            least = total;
        int best = 0;
        for (int left = 2; left < order.Length; left += 2)
        {
            total += Gap(left - 2) - Gap(left - 1); // the one left moves up by two places
            (least, best) = total < least ? (total, left) : (least, best);
        }

        return best;
    }

    private static double Difference(PairingCoil one, PairingCoil other, IReadOnlyList<PairingPreference> wishes)
    {
        double sum = 0,
            weights = 0;
        for (int at = 0; at < wishes.Count; at++)
        {
            sum += wishes[at].Weight * wishes[at].Difference(one.Values[at], other.Values[at]);
            weights += wishes[at].Weight;
        }

        return sum / weights;
    }

    private static long Whole(double difference, double largest) => largest > 0 ? (long)Math.Round(difference / largest * Steps) : 0;
}
