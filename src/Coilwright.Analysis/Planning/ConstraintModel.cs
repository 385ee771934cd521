using Google.OrTools.Sat;
using Google.OrTools.Util;

namespace Coilwright.Analysis.Planning;

/// <summary>The plan as constraints over whole numbers.</summary>
/// <remarks>
/// A start and an interval for each step and station that can do it; one of them is present. No two overlap on a station. Where set-ups
/// depend on the order, a circuit through the present steps of a station says which follows which; the work and set-ups of a station
/// together bound the makespan, which the circuit's relaxation uses.
/// </remarks>
internal sealed class ConstraintModel
{
    private readonly PlanModel _model;
    private readonly IntVar[] _starts;
    private readonly BoolVar[][] _present;
    private readonly LinearExpr[] _ends;
    private readonly IntVar _makespan;
    private readonly Dictionary<(int Station, int Step, long SetUp), BoolVar> _afterSetUp = [];

    /// <summary>Weights are whole thousandths.</summary>
    private const double WeightUnit = 1e-3;

    public ConstraintModel(PlanModel model)
    {
        _model = model;
        _makespan = Constraints.NewIntVar(LoadBound.Makespan(model), model.Horizon, "makespan");
        _starts = [.. model.Steps.Select((_, at) => Constraints.NewIntVar(0, model.Horizon, $"start {at}"))];
        _present = [.. model.Steps.Select(Presence)];
        _ends = [.. model.Steps.Select((step, at) => _starts[at] + Time(step, at))];
        AddJobs();
        for (int station = 0; station < model.OnStation.Count; station++)
        {
            AddStation(station);
        }

        Constraints.Minimize(model.List.Want == PlanObjective.Tardiness ? Tardiness() : _makespan);
    }

    public CpModel Constraints { get; } = new();

    /// <summary>Seconds of what is wanted in one unit of the objective.</summary>
    public double SecondsPerObjective => _model.Seconds(1) * (_model.List.Want == PlanObjective.Tardiness ? WeightUnit : 1);

    public void Hint(StationOrders orders, long[] starts)
    {
        for (int at = 0; at < starts.Length; at++)
        {
            Constraints.AddHint(_starts[at], starts[at]);
            for (int option = 0; option < _present[at].Length; option++)
            {
                Constraints.AddHint(_present[at][option], _model.Steps[at].On[option].Station == orders.StationOf[at]);
            }
        }
    }

    public StationOrders Read(CpSolver solver)
    {
        int[] stationOf =
        [
            .. _model.Steps.Select((step, at) => step.On[Array.FindIndex(_present[at], one => solver.BooleanValue(one))].Station),
        ];
        return StationOrders.From(_model, stationOf, [.. _starts.Select(start => solver.Value(start))]);
    }

    private BoolVar[] Presence(ModelStep step, int at)
    {
        BoolVar[] present = [.. step.On.Select(option => Constraints.NewBoolVar($"step {at} on {option.Station}"))];
        Constraints.AddExactlyOne(present);
        return present;
    }

    private LinearExpr Time(ModelStep step, int at) => LinearExpr.WeightedSum(_present[at], step.On.Select(option => option.Time));

    private void AddJobs()
    {
        for (int at = 0; at < _starts.Length; at++)
        {
            ModelStep step = _model.Steps[at];
            if (step.IsFirst)
            {
                Constraints.Add(_starts[at] >= _model.Release(step.Job));
            }

            if (step.IsLast)
            {
                Constraints.Add(_makespan >= _ends[at]);
                continue;
            }

            Constraints.Add(_starts[at + 1] >= _ends[at] + step.MinGap);
            if (step.MaxGap is { } most)
            {
                Constraints.Add(_starts[at + 1] <= _ends[at] + most);
            }
        }
    }

    private void AddStation(int station)
    {
        int[] steps = _model.OnStation[station];
        BoolVar[] here = [.. steps.Select(at => Here(at, station))];
        Constraints.AddNoOverlap(
            steps.Select(
                (at, n) => Constraints.NewOptionalFixedSizeIntervalVar(_starts[at], _model.Steps[at].Takes(station), here[n], $"{at}")
            )
        );
        for (int n = 0; n < steps.Length; n++)
        {
            KeepHours(station, steps[n], 0, here[n]);
        }

        List<BoolVar> literals = [.. here];
        List<long> times = [.. steps.Select(at => _model.Steps[at].Takes(station))];
        if (_model.NeedsSetUps(station) && steps.Length > 1)
        {
            AddCircuit(station, steps, here, literals, times);
        }

        if (steps.Length > 0)
        {
            Constraints.Add(_makespan >= LinearExpr.WeightedSum(literals, times));
        }
    }

    private BoolVar Here(int at, int station) =>
        _present[at][_model.Steps[at].On.Select(option => option.Station).ToList().IndexOf(station)];

    private void AddCircuit(int station, int[] steps, BoolVar[] here, List<BoolVar> literals, List<long> times)
    {
        CircuitConstraint circuit = Constraints.AddCircuit();
        BoolVar idle = Constraints.NewBoolVar($"nothing on {station}");
        circuit.AddArc(0, 0, idle);
        for (int n = 0; n < steps.Length; n++)
        {
            circuit.AddArc(0, n + 1, Constraints.NewBoolVar("first"));
            circuit.AddArc(n + 1, 0, Constraints.NewBoolVar("last"));
            circuit.AddArc(n + 1, n + 1, here[n].Not());
            Constraints.AddImplication(here[n], idle.Not());
            for (int next = 0; next < steps.Length; next++)
            {
                if (next != n && !(_model.Steps[steps[n]].Job == _model.Steps[steps[next]].Job && steps[n] > steps[next]))
                {
                    BoolVar follows = Constraints.NewBoolVar("follows");
                    circuit.AddArc(n + 1, next + 1, follows);
                    literals.Add(follows);
                    times.Add(AddFollows(station, steps[n], steps[next], follows));
                }
            }
        }
    }

    private long AddFollows(int station, int before, int after, BoolVar follows)
    {
        long setUp = _model.SetUp(station, before, after);
        Constraints.Add(_starts[after] >= _starts[before] + (_model.Steps[before].Takes(station) + setUp)).OnlyEnforceIf(follows);
        if (setUp > 0 && !_model.Calendars[station].IsAlwaysOpen)
        {
            Constraints.AddImplication(follows, AfterSetUp(station, after, setUp));
        }

        return setUp;
    }

    /// <summary>True when a step comes after a set-up of so long: one for all steps that may come before it.</summary>
    private BoolVar AfterSetUp(int station, int at, long setUp)
    {
        if (!_afterSetUp.TryGetValue((station, at, setUp), out BoolVar? after))
        {
            after = Constraints.NewBoolVar($"set-up {setUp} before {at}");
            _afterSetUp[(station, at, setUp)] = after;
            KeepHours(station, at, setUp, after);
        }

        return after;
    }

    private void KeepHours(int station, int at, long setUp, BoolVar when)
    {
        Calendar calendar = _model.Calendars[station];
        if (!calendar.IsAlwaysOpen)
        {
            Domain starts = Domain.FromIntervals([.. calendar.Starts(_model.Horizon, setUp, _model.Steps[at].Takes(station))]);
            Constraints.AddLinearExpressionInDomain(_starts[at], starts).OnlyEnforceIf(when);
        }
    }

    private LinearExpr Tardiness()
    {
        List<LinearExpr> late = [];
        for (int at = 0; at < _ends.Length; at++)
        {
            ModelStep step = _model.Steps[at];
            if (step.IsLast && _model.Due(step.Job) is { } due)
            {
                IntVar by = Constraints.NewIntVar(0, _model.Horizon, $"late {step.Job}");
                Constraints.Add(by >= _ends[at] - due);
                late.Add(by * (long)Math.Round(_model.List.Jobs[step.Job].Weight / WeightUnit));
            }
        }

        return LinearExpr.Sum(late);
    }
}
