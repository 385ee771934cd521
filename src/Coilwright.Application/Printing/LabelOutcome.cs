using Coilwright.Papers.Labels;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Printing;

/// <summary>Labels to print, or every reason why there are none.</summary>
/// <param name="Labels">The labels; empty where there are problems.</param>
/// <param name="Size">Their size.</param>
/// <param name="Problems">What is wrong.</param>
public sealed record LabelOutcome(IReadOnlyList<PieceLabel> Labels, LabelSize Size, IReadOnlyList<Problem> Problems);
