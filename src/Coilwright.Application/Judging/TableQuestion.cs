namespace Coilwright.Application.Judging;

/// <summary>How a table is to be judged.</summary>
/// <param name="Coil">Place of the coil that the readings are of; null decides by the readings.</param>
/// <param name="GoldenTag">Tag of the golden piece.</param>
/// <param name="MeterPart">Uncertainty of the resistance meter, a part of its reading (95 %).</param>
public sealed record TableQuestion(int? Coil, string GoldenTag, double MeterPart)
{
    /// <summary>Coils in a subgroup of the charts; null for no charts.</summary>
    public int? Subgroup { get; init; }
}
