namespace Coilwright.Workshop.Pieces;

/// <summary>The final test of one piece.</summary>
/// <param name="Outcomes">Every check, in order.</param>
/// <param name="Verdict">"pass", "hold: …", "fail: …" or "stop: …", with the probable cause.</param>
/// <param name="Passes">True when the piece may be shipped.</param>
public sealed record FinalTestVerdict(IReadOnlyList<TestOutcome> Outcomes, string Verdict, bool Passes);
