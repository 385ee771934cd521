using Coilwright.Analysis.Listening;

namespace Coilwright.Application.Listening;

/// <summary>A blind test under way or over: two sounds, and in each round one of them again without its name.</summary>
public sealed class BlindTest
{
    private readonly Lock _gate = new();
    private readonly byte[][] _waves;
    private readonly Func<bool> _draw;
    private bool _isSecond;
    private int _answered,
        _hits;

    internal BlindTest(Guid id, HeardDesigns heard, int rounds, Func<bool> draw)
    {
        (Id, Heard, Rounds, _draw) = (id, heard with { Designs = [.. heard.Designs.Select(Told)] }, rounds, draw);
        _waves = [heard.Wave(0), heard.Wave(1)];
        _isSecond = draw();
    }

    /// <summary>Its key, which nobody can guess.</summary>
    public Guid Id { get; }

    /// <summary>The two designs; their samples stand in the files alone.</summary>
    public HeardDesigns Heard { get; }

    /// <summary>Rounds in all.</summary>
    public int Rounds { get; }

    /// <summary>Number of the round under way, from 1; one more than all when it is over.</summary>
    public int Round
    {
        get
        {
            lock (_gate)
            {
                return _answered + 1;
            }
        }
    }

    /// <summary>What it says; null before the last round is answered.</summary>
    public BlindVerdict? Verdict
    {
        get
        {
            lock (_gate)
            {
                return _answered == Rounds ? new BlindVerdict(_hits, Rounds) : null;
            }
        }
    }

    /// <summary>The file of A (0) or B (1).</summary>
    public byte[] Known(int place) => _waves[place];

    /// <summary>The file of X in the round under way; null for any other round.</summary>
    /// <param name="round">Number of the round, from 1.</param>
    public byte[]? Unknown(int round)
    {
        lock (_gate)
        {
            return round == _answered + 1 && round <= Rounds ? Drawn : null;
        }
    }

    private byte[] Drawn => _waves[_isSecond ? 1 : 0];

    /// <summary>Takes an answer. One for another round than the one under way, such as one that was sent twice, changes nothing.</summary>
    /// <param name="round">Number of the round that it is for.</param>
    /// <param name="isSecond">True for "X is B".</param>
    public void Answer(int round, bool isSecond)
    {
        lock (_gate)
        {
            if (round != _answered + 1 || _answered == Rounds)
            {
                return;
            }

            _hits += isSecond == _isSecond ? 1 : 0;
            _answered++;
            _isSecond = _draw();
        }
    }

    private static HeardDesign Told(HeardDesign design) => design with { Volts = [] };
}
