using Coilwright.Application.Shops;

namespace Coilwright.Web.Hosting;

/// <summary>Whether this server can show the invented shop.</summary>
/// <param name="Server">What serves it; null where it cannot, as in the invented shop itself.</param>
public sealed record DemoOffer(IDemoServer? Server);
