namespace Coilwright.Web.Hosting;

/// <summary>Marks an address that takes a form and stores nothing, such as a forecast of what stands in it.</summary>
internal sealed class ChangesNothing;
