namespace Coilwright.Analysis.Diagnosis;

/// <summary>What was learnt from the coils of one spool.</summary>
internal sealed class SpoolLearning
{
    private readonly BatchOffsets _offsets;
    private readonly int[] _learnt;
    private readonly WeighedCoil[] _weighed;

    /// <summary>Weighs the coils that are learnt from.</summary>
    /// <param name="batch">Every coil of the batch.</param>
    /// <param name="learnt">Places of those that are learnt from, in order.</param>
    /// <param name="offsets">What all coils have in common.</param>
    public SpoolLearning(IReadOnlyList<CoilEvidence> batch, int[] learnt, BatchOffsets offsets)
    {
        (_learnt, _offsets) = (learnt, offsets);
        _weighed = new WeighedCoil[learnt.Length];
        double[][] logs = new double[learnt.Length][];
        Parallel.For(0, learnt.Length, n =>
        {
            _weighed[n] = offsets.Weigh(learnt[n]);
            logs[n] = [.. _weighed[n].Likelihood.Select(likelihood => Math.Log(likelihood))];
        });
        Run = new SpoolRun(logs, learnt.Length > 0 ? batch[learnt[0]] : batch[0]);
    }

    /// <summary>The run of the coils that were learnt from.</summary>
    public SpoolRun Run { get; }

    /// <summary>Places in the batch of the coils that were learnt from.</summary>
    public IReadOnlyList<int> Learnt => _learnt;

    /// <summary>One coil, weighed.</summary>
    public WeighedCoil Weigh(int place) => PlaceOf(place) is (var at, true) ? _weighed[at] : _offsets.Weigh(place);

    /// <summary>Where a coil stands among those learnt from, and whether it is one of them.</summary>
    public (int At, bool IsAmong) PlaceOf(int place)
    {
        int found = Array.BinarySearch(_learnt, place);
        return found >= 0 ? (found, true) : (~found, false);
    }
}
