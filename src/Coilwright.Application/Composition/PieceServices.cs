using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Application.Composition;

/// <summary>The rules of pieces by their names, from coils to customers and back; each is what was registered.</summary>
public sealed class PieceServices(IServiceProvider services)
{
    public PieceService Shelf => services.GetRequiredService<PieceService>();
    public CoilService Coils => services.GetRequiredService<CoilService>();
    public AssemblyService Assembly => services.GetRequiredService<AssemblyService>();
    public StepService Steps => services.GetRequiredService<StepService>();
    public MagnetChargeService Magnets => services.GetRequiredService<MagnetChargeService>();
    public PottingService Potting => services.GetRequiredService<PottingService>();
    public UndoService Undo => services.GetRequiredService<UndoService>();
    public InkService Ink => services.GetRequiredService<InkService>();
    public StepUndoing StepUndo => services.GetRequiredService<StepUndoing>();
    public TimeMending Times => services.GetRequiredService<TimeMending>();
    public SetService Sets => services.GetRequiredService<SetService>();
    public FinalTestService Test => services.GetRequiredService<FinalTestService>();
    public DispatchService DispatchService => services.GetRequiredService<DispatchService>();
    public ReturnService Returns => services.GetRequiredService<ReturnService>();
    public TraceService Trace => services.GetRequiredService<TraceService>();
    public NameSearch Search => services.GetRequiredService<NameSearch>();
    public CustomerService Customers => services.GetRequiredService<CustomerService>();
}
