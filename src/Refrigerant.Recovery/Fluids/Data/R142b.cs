using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-142b, 1-chloro-1,1-difluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R142b
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-142b",
        Name = "1-chloro-1,1-difluoroethane",
        CasNumber = "75-68-3",
        Source = "E.W. Lemmon and R. Span, (2006), Short Fundamental Equations of State for 20 Industrial Fluids, J. "
            + "Chem. Eng. Data, vol. 51, 785-850, doi:10.1021/je050186n",
        MolarMass = 0.10049503,
        GasConstant = 8.314472,
        ReducingTemperature = 410.26,
        ReducingMolarDensity = 4438,
        CriticalTemperature = 410.26,
        CriticalPressure = 4055000,
        CriticalMolarDensity = 4438,
        AcentricFactor = 0.2321,
        MinimumTemperature = 142.72,
        MaximumTemperature = 470,
        MaximumPressure = 60000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 5.0385, 1.152927411885146 },
                { 6.8356, 3.061473212109394 },
                { 4.0591, 6.086384244137864 },
                { 2.8136, 16.67235411690148 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.0038, 1, 0.25, 0 },
                { -2.7662, 1, 1.25, 0 },
                { 0.42921, 1, 1.5, 0 },
                { 0.081363, 3, 0.25, 0 },
                { 0.00024174, 7, 0.875, 0 },
                { 0.48246, 1, 2.375, 1 },
                { 0.75542, 2, 2, 1 },
                { -0.00743, 5, 2.125, 1 },
                { -0.4146, 1, 3.5, 2 },
                { -0.016558, 1, 6.5, 2 },
                { -0.10644, 4, 4.75, 2 },
                { -0.021704, 2, 12.5, 3 },
            },
        },
    };
}
