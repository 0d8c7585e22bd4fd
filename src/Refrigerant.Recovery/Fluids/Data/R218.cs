using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-218, octafluoropropane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R218
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-218",
        Name = "octafluoropropane",
        CasNumber = "76-19-7",
        Source = "E.W. Lemmon and R. Span, (2006), Short Fundamental Equations of State for 20 Industrial Fluids, J. "
            + "Chem. Eng. Data, vol. 51, 785-850, doi:10.1021/je050186n",
        MolarMass = 0.18801933,
        GasConstant = 8.314472,
        ReducingTemperature = 345.02,
        ReducingMolarDensity = 3340.000000000001,
        CriticalTemperature = 345.02,
        CriticalPressure = 2640000,
        CriticalMolarDensity = 3340.0000000000005,
        AcentricFactor = 0.3172,
        MinimumTemperature = 125.45,
        MaximumTemperature = 440,
        MaximumPressure = 20000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 7.2198, 0.9448727609993625 },
                { 7.2692, 1.724537707958959 },
                { 11.599, 4.315691843951075 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.327, 1, 0.25, 0 },
                { -3.8433, 1, 1.25, 0 },
                { 0.922, 1, 1.5, 0 },
                { 0.1136, 3, 0.25, 0 },
                { 0.00036195, 7, 0.875, 0 },
                { 1.1001, 1, 2.375, 1 },
                { 1.1896, 2, 2, 1 },
                { -0.025147, 5, 2.125, 1 },
                { -0.65923, 1, 3.5, 2 },
                { -0.027969, 1, 6.5, 2 },
                { -0.1833, 4, 4.75, 2 },
                { -0.02163, 2, 12.5, 3 },
            },
        },
    };
}
