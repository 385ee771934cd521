using System.Collections.Concurrent;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>Makes the kernel of all parts: the normal field that each unknown's density causes on each unknown's element.</summary>
internal sealed class SystemKernel(IReadOnlyList<MagneticBody> bodies, SystemPlaces places, double[] weight)
{
    /// <summary>Below this many unknowns the work is over before a second thread has begun.</summary>
    private const int WorthThreads = 150;

    private readonly int _n = places.Count;
    private readonly double[] _kernel = new double[places.Count * places.Count];
    private readonly ConcurrentDictionary<(RingMesh, RingMesh, long, long), RodPair> _pairs = [];

    /// <summary>The kernel, and its blocks as they were before fluxes were set right.</summary>
    /// <param name="known">Blocks of a neighbour: those between parts that did not change are taken from it; null for none.</param>
    /// <param name="keep">True to copy the blocks, for neighbours to come; else they are empty.</param>
    /// <param name="cancel">Stops it.</param>
    public (double[] Kernel, KernelBlocks Blocks) Make(KernelBlocks? known, bool keep, CancellationToken cancel)
    {
        // One task for a target and all sources that share unknowns: no two write to the same place.
        int[] led = [.. Enumerable.Range(0, bodies.Count).Where(places.IsLed)];
        KernelBlocks own = new(bodies, places, _kernel);
        (int Target, int Group)[] open = [.. led.SelectMany(t => led.Select(g => (t, g)))];
        if (known is not null && known.CopyTo(_kernel, own))
        {
            open = [.. open.Where(block => !known.Holds(own, block.Target, block.Group))];
            Array.ForEach(open, block => own.Clear(_kernel, block.Target, block.Group));
        }

        bool alone = known is not null || _n < WorthThreads;
        ParallelOptions options = new() { CancellationToken = cancel, MaxDegreeOfParallelism = alone ? 1 : -1 };
        // Distinct pairs first, so that no two threads make the same.
        Parallel.ForEach(Pairs(open).DistinctBy(pair => Key(pair.Target, pair.Source)).ToArray(), options, pair =>
            PairOf(pair.Target, pair.Source)
        );
        Parallel.ForEach(open, options, block =>
        {
            for (int s = 0; s < bodies.Count; s++)
            {
                if (places.Group[s] == block.Group)
                {
                    Add(block.Target, s);
                }
            }
        });
        KernelBlocks blocks = own with { Raw = keep ? [.. _kernel] : [] };
        ConserveFlux();
        return (_kernel, blocks);
    }

    private IEnumerable<(RingBody Target, RingBody Source)> Pairs((int Target, int Group)[] blocks) =>
        blocks
            .SelectMany(block =>
                Enumerable
                    .Range(0, bodies.Count)
                    .Where(s => places.Group[s] == block.Group && s != block.Target)
                    .Select(s => (block.Target, s))
            )
            .Where(pair => bodies[pair.Target] is RingBody && bodies[pair.s] is RingBody)
            .Select(pair => ((RingBody)bodies[pair.Target], (RingBody)bodies[pair.s]));

    private static (RingMesh, RingMesh, long, long) Key(RingBody target, RingBody source)
    {
        double dx = target.X - source.X,
            dy = target.Y - source.Y;
        return (
            target.Mesh,
            source.Mesh,
            (long)Math.Round((dx * dx + dy * dy) * 1e15),
            (long)Math.Round((target.Bottom - source.Bottom) * 1e10)
        );
    }

    private RodPair PairOf(RingBody target, RingBody source) => _pairs.GetOrAdd(Key(target, source), _ => new RodPair(target, source));

    private void Add(int t, int s)
    {
        if (bodies[t] is not RingBody target || bodies[s] is not RingBody source)
        {
            AddPoints(t, s);
        }
        else if (t == s)
        {
            AddSelf(target, t);
        }
        else
        {
            AddPair(target, source, t, s);
        }
    }

    /// <summary>A wave acts on its like alone.</summary>
    private void AddSelf(RingBody rod, int t)
    {
        int rings = rod.Stride;
        for (int f = 0; f < rod.Waves; f++)
        {
            double[,] block = rod.Mesh.SelfOf(rod.Azimuth.Waves[f].Order);
            for (int i = f * rings; i < (f + 1) * rings; i++)
            {
                double share = places.Share[t][i];
                for (int j = 0; share > 0 && j < rings; j++)
                {
                    _kernel[places.Unknown[t][i] * _n + places.Unknown[t][f * rings + j]] += share * block[i - f * rings, j];
                }
            }
        }
    }

    /// <summary>Waves turned into the frame of the pair and back.</summary>
    private void AddPair(RingBody target, RingBody source, int t, int s)
    {
        RodPair pair = PairOf(target, source);
        double dx = target.X - source.X,
            dy = target.Y - source.Y,
            turn = Math.Abs(dx) + Math.Abs(dy) < 1e-12 ? 0 : Math.Atan2(dy, dx);
        for (int g = 0; g < source.Waves; g++)
        {
            (int from, bool fromSine) = source.Azimuth.Waves[g];
            double evenFrom = fromSine ? Math.Sin(from * turn) : Math.Cos(from * turn),
                oddFrom = fromSine ? Math.Cos(from * turn) : -Math.Sin(from * turn);
            for (int f = 0; f < target.Waves; f++)
            {
                (int to, bool toSine) = target.Azimuth.Waves[f];
                double evenTo = toSine ? Math.Sin(to * turn) : Math.Cos(to * turn),
                    oddTo = toSine ? Math.Cos(to * turn) : -Math.Sin(to * turn);
                AddTurned(pair, target, source, t, s, f, g, evenFrom * evenTo, source.Azimuth.Sines ? oddFrom * oddTo : 0);
            }
        }
    }

    private void AddTurned(RodPair pair, RingBody target, RingBody source, int t, int s, int f, int g, double even, double odd)
    {
        (int to, int from) = (target.Azimuth.Waves[f].Order, source.Azimuth.Waves[g].Order);
        int[] columns = places.Unknown[s],
            signs = places.Sign[s];
        int first = g * source.Stride;
        bool both = Math.Abs(odd) > 1e-12;
        for (int i = 0; i < target.Stride; i++)
        {
            int element = f * target.Stride + i;
            double share = places.Share[t][element];
            if (share <= 0 || columns[first] < 0)
            {
                continue;
            }

            ReadOnlySpan<double> evens = pair.Row(odd: false, to, from, i),
                odds = both ? pair.Row(odd: true, to, from, i) : evens;
            Span<double> row = _kernel.AsSpan(places.Unknown[t][element] * _n, _n);
            for (int j = 0; j < evens.Length; j++)
            {
                row[columns[first + j]] += share * signs[first + j] * (even * evens[j] + (both ? odd * odds[j] : 0));
            }
        }
    }

    private void AddPoints(int t, int s)
    {
        (MagneticBody target, MagneticBody source) = (bodies[t], bodies[s]);
        (int[] columns, int[] signs) = (places.Unknown[s], places.Sign[s]);
        double[] normal = new double[source.Count];
        int first = columns.Where(column => column >= 0).Min();
        double[] folded = new double[columns.Max() - first + 1];
        FootContact? contact = (target, source) switch
        {
            (RingBody foot, PanelBody floor) => FootContact.Find(foot, floor),
            (PanelBody floor, RingBody foot) => FootContact.Find(foot, floor),
            _ => null,
        };
        foreach (SurfacePoint point in source is RingBody ? target.Spread : target.Points)
        {
            bool used = false;
            for (int f = 0; f < point.Shares.Length; f++)
            {
                used |= places.Share[t][point.Element + f * target.Stride] > 0;
            }

            if (used)
            {
                source.NormalFields(point, normal);
                if (t == s)
                {
                    normal[point.Element] = 0; // a flat element's own normal field is zero; its diagonal follows from the flux
                }

                for (int j = 0; contact is not null && j < normal.Length; j++)
                {
                    bool touching =
                        target is RingBody ? contact.Covers(point.Element, j) : contact.Covers(j % source.Stride, point.Element);
                    normal[j] = touching ? 0 : normal[j];
                }

                Fold(normal, columns, signs, first, folded);
                for (int f = 0, element = point.Element; f < point.Shares.Length; f++, element += target.Stride)
                {
                    double share = places.Share[t][element] * point.Shares[f];
                    if (share is not 0)
                    {
                        Rows.Subtract(_kernel.AsSpan(places.Unknown[t][element] * _n + first, folded.Length), folded, -share);
                    }
                }
            }
        }

        if (contact is not null)
        {
            AddContact(contact, t, s);
        }
    }

    /// <summary>Half of each overlapping density, against the normal.</summary>
    private void AddContact(FootContact contact, int t, int s)
    {
        (MagneticBody target, MagneticBody source) = (bodies[t], bodies[s]);
        foreach ((int ring, int panel, double[] shares) in contact.Overlaps)
        {
            for (int f = 0; f < shares.Length; f++)
            {
                int row = target is RingBody ? ring + f * target.Stride : panel,
                    column = target is RingBody ? panel : ring + f * source.Stride;
                double onPanel = target is RingBody ? 1 : source.Weight[column] / target.Area[panel];
                if (places.Unknown[s][column] >= 0 && places.Share[t][row] > 0)
                {
                    _kernel[places.Unknown[t][row] * _n + places.Unknown[s][column]] -=
                        places.Share[t][row] * places.Sign[s][column] * shares[f] * onPanel / 2;
                }
            }
        }
    }

    /// <summary>From elements to the run of unknowns that they share.</summary>
    private static void Fold(double[] normal, int[] columns, int[] signs, int first, double[] folded)
    {
        Array.Clear(folded);
        for (int j = 0; j < normal.Length; j++)
        {
            if (columns[j] >= 0)
            {
                folded[columns[j] - first] += signs[j] * normal[j];
            }
        }
    }

    /// <summary>
    /// Half of a charge's flux leaves its own body, none enters another: diagonals and means set right, or the net charge runs away as µ
    /// grows.
    /// </summary>
    private void ConserveFlux()
    {
        (int[] group, bool[] net, double[] area) = (new int[_n], new bool[_n], new double[bodies.Count]);
        for (int b = 0; b < bodies.Count; b++)
        {
            for (int i = 0; i < bodies[b].Count; i++)
            {
                int u = places.Unknown[b][i];
                area[places.Group[b]] += bodies[b].Area[i];
                if (u >= 0)
                {
                    (group[u], net[u]) = (places.Group[b], bodies[b].Area[i] > 0);
                }
            }
        }

        double[][] flux = new double[bodies.Count][];
        for (int i = 0; i < _n; i++)
        {
            flux[group[i]] ??= new double[_n];
            if (net[i])
            {
                Rows.Subtract(flux[group[i]], _kernel.AsSpan(i * _n, _n), -weight[i]);
            }
        }

        // A body's own net charges are set right on their diagonals alone, all others by the mean over the body.
        double[][] mean =
        [
            .. flux.Select((own, b) => own is null ? [] : own.Select((all, j) => group[j] == b && net[j] ? 0 : all / area[b]).ToArray()),
        ];
        for (int i = 0; i < _n; i++)
        {
            if (net[i])
            {
                Rows.Subtract(_kernel.AsSpan(i * _n, _n), mean[group[i]], 1);
                _kernel[i * _n + i] -= flux[group[i]][i] / weight[i] - 0.5;
            }
        }
    }
}
