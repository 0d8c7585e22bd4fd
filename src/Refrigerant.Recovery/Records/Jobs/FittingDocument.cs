using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A fitting: a valve core with its depressor, or a name with a flow coefficient Cv or a loss coefficient and its diameter.</summary>
internal sealed record FittingDocument
{
    public const string OneOf = "give one of coreDepressor, flowCoefficient, and lossCoefficient with diameterMillimeters.";

    /// <summary>What it is.</summary>
    public string? Name { get; init; }

    /// <summary>True for an access valve with its core held open; then neither a flow coefficient nor a loss coefficient is given.</summary>
    public bool? CoreDepressor { get; init; }

    /// <summary>Cv: US gallons of water a minute at a drop of 1 psi, 0.001 to 10 000. Give this, or lossCoefficient with diameterMillimeters.</summary>
    public double? FlowCoefficient { get; init; }

    /// <summary>Pressure differential ratio factor x_T of IEC 60534-2-1 of a core or of a fitting with a flow coefficient, 0.1 to 0.99; 0.72 by default (from memory).</summary>
    public double? PressureDifferentialRatioFactor { get; init; }

    /// <summary>Liquid pressure recovery factor F_L of IEC 60534-2-1 of a core or of a fitting with a flow coefficient, 0.1 to 1; 0.90 by default (from memory).</summary>
    public double? LiquidPressureRecoveryFactor { get; init; }

    /// <summary>Loss coefficient K, 0 to 1e6, referred to the velocity in diameterMillimeters.</summary>
    public double? LossCoefficient { get; init; }

    /// <summary>The inner diameter that the loss coefficient refers to, 0.1 to 1000 mm.</summary>
    public double? DiameterMillimeters { get; init; }

    /// <summary>What was given of the fitting.</summary>
    public static FittingDocument From(Fitting fitting) => fitting.FlowArea > 0
        ? new FittingDocument
        {
            Name = fitting.IsCore ? null : fitting.Name,
            CoreDepressor = fitting.IsCore ? true : null,
            FlowCoefficient = fitting.IsCore ? null : Exact.Number(fitting.FlowCoefficient),
            PressureDifferentialRatioFactor = Exact.Number(fitting.PressureDifferentialRatioFactor),
            LiquidPressureRecoveryFactor = Exact.Number(fitting.LiquidPressureRecoveryFactor),
        }
        : new FittingDocument
        {
            Name = fitting.Name,
            LossCoefficient = Exact.Number(fitting.LossCoefficient),
            DiameterMillimeters = Exact.Millimeters(fitting.Diameter),
            PressureDifferentialRatioFactor = Exact.Number(fitting.PressureDifferentialRatioFactor),
            LiquidPressureRecoveryFactor = Exact.Number(fitting.LiquidPressureRecoveryFactor),
        };

    public Fitting ToFitting(DocumentNode node)
    {
        string name = Name ?? "fitting";
        return (CoreDepressor, FlowCoefficient, LossCoefficient, DiameterMillimeters) switch
        {
            (true, null, null, null) => node.Build(() => WithFactors(Fitting.CoreDepressor())),
            (null or false, double flow, null, null) => node.Build(() => WithFactors(Fitting.FromFlowCoefficient(name, flow))),
            (null or false, null, double loss, double diameter) =>
                node.Build(() => WithFactors(Fitting.FromLossCoefficient(name, loss, Exact.BoreOf(diameter)))),
            _ => throw node.Wrong(OneOf),
        };
    }

    private Fitting WithFactors(Fitting fitting) => fitting with
    {
        PressureDifferentialRatioFactor = PressureDifferentialRatioFactor ?? fitting.PressureDifferentialRatioFactor,
        LiquidPressureRecoveryFactor = LiquidPressureRecoveryFactor ?? fitting.LiquidPressureRecoveryFactor,
    };
}
