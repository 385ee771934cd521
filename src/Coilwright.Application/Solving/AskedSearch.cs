using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Solving;

/// <summary>Rows and ticks as they were understood.</summary>
/// <param name="Want">What is wanted, a line each, as at the command line.</param>
/// <param name="Vary">What may change, as at the command line.</param>
/// <param name="Understood">Each row as understood; null where it says nothing or was not.</param>
/// <param name="Problems">What is wrong, each with its row or tick.</param>
public sealed record AskedSearch(string Want, string Vary, IReadOnlyList<Objective?> Understood, IReadOnlyList<Problem> Problems);
