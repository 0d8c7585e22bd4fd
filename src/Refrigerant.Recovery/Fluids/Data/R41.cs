using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-41, fluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R41
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-41",
        Name = "fluoromethane",
        CasNumber = "593-53-3",
        Source = "E.W. Lemmon and R. Span, (2006), Short Fundamental Equations of State for 20 Industrial Fluids, J. "
            + "Chem. Eng. Data, vol. 51, 785-850, doi:10.1021/je050186n",
        MolarMass = 0.03403291999999999,
        GasConstant = 8.314472,
        ReducingTemperature = 317.28,
        ReducingMolarDensity = 9300,
        CriticalTemperature = 317.28000000000003,
        CriticalPressure = 5897000,
        CriticalMolarDensity = 9300,
        AcentricFactor = 0.2004,
        MinimumTemperature = 129.82,
        MaximumTemperature = 425,
        MaximumPressure = 70000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -0.0268688568, -1 },
            },
            planckEinstein: new double[,]
            {
                { 5.6936, 5.802445789208271 },
                { 2.9351, 13.33837619768028 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.85316, 1, 0.25, 0 },
                { -2.6366, 1, 1.25, 0 },
                { 0.69129, 1, 1.5, 0 },
                { 0.054681, 3, 0.25, 0 },
                { 0.00012796, 7, 0.875, 0 },
                { -0.37093, 1, 2.375, 1 },
                { 0.3392, 2, 2, 1 },
                { -0.0017413, 5, 2.125, 1 },
                { -0.095417, 1, 3.5, 2 },
                { -0.078852, 1, 6.5, 2 },
                { -0.030729, 4, 4.75, 2 },
                { -0.011497, 2, 12.5, 3 },
            },
        },
    };
}
