namespace Coilwright.Analysis.Lots;

/// <summary>One purchase for a need that is uncertain, with no second chance.</summary>
/// <param name="Overage">Money lost on each unit too many, above zero.</param>
/// <param name="Underage">Money lost on each unit too few, above zero.</param>
/// <param name="Need">How the need may come out.</param>
public sealed record OneTimeDemand(double Overage, double Underage, NeedDistribution Need) : Demand;
