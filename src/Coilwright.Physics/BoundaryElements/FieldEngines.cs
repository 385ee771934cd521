namespace Coilwright.Physics.BoundaryElements;

/// <summary>For sliders: a single coil with six rods in about a millisecond, the cores' share within 2.5 %.</summary>
public sealed class FastFieldEngine : IFieldEngine
{
    private readonly SurfaceFieldEngine _engine = new(FieldSettings.Fast);

    public string Name => "fast";

    public FieldSolution Solve(FieldProblem problem, CancellationToken cancel = default) => _engine.Solve(problem, cancel);
}

/// <summary>For what is kept and printed: the cores' share within 0.5 %.</summary>
public sealed class AccurateFieldEngine : IFieldEngine
{
    private readonly SurfaceFieldEngine _engine = new(FieldSettings.Accurate);

    public string Name => "accurate";

    public FieldSolution Solve(FieldProblem problem, CancellationToken cancel = default) => _engine.Solve(problem, cancel);
}
