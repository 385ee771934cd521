namespace Coilwright.Workshop.Pieces;

/// <summary>How one check of the final test came out.</summary>
public enum TestResult
{
    Pass,

    /// <summary>Not measured: the piece cannot pass, and need not be wrong.</summary>
    Missing,
    Fail,

    /// <summary>Fail, and nothing goes on before it has been looked at.</summary>
    Stop,
}
