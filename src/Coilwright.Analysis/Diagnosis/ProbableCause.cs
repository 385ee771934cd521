namespace Coilwright.Analysis.Diagnosis;

/// <summary>A cause by its name in the file format, its probability among those considered, and a word on its size.</summary>
public sealed record ProbableCause(string Name, double Probability, string Detail);
