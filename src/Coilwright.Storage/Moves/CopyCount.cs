namespace Coilwright.Storage.Moves;

/// <summary>Tells how far a copy is.</summary>
/// <param name="progress">Who is told; null for nobody.</param>
/// <param name="of">Rows in all.</param>
internal sealed class CopyCount(IProgress<(int Done, int Of)>? progress, long of)
{
    /// <summary>It is told after so many rows.</summary>
    private const int Step = 500;

    private long _done;

    /// <summary>One row more.</summary>
    public void Next()
    {
        if (++_done % Step == 0)
        {
            progress?.Report(((int)_done, (int)of));
        }
    }
}
