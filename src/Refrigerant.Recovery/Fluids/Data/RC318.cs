using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-C318, octafluorocyclobutane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class RC318
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-C318",
        Name = "octafluorocyclobutane",
        CasNumber = "115-25-3",
        Source = "B. Platzer and A. Polt and G. Maurer, (1990), Thermophysical Properties of Refrigerants, "
            + "Springer-Verlag, doi:10.1007/978-3-662-02608-3",
        MolarMass = 0.2000312,
        GasConstant = 8.31451,
        ReducingTemperature = 388.38,
        ReducingMolarDensity = 3099.38,
        CriticalTemperature = 388.38,
        CriticalPressure = 2777500,
        CriticalMolarDensity = 3099.38,
        AcentricFactor = 0.355345,
        MinimumTemperature = 233.35,
        MaximumTemperature = 623,
        MaximumPressure = 60000000,
        IdealGas = new IdealHelmholtz(
            logTau: 1.9110284550743222,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -13.562350936782085, -1 },
                { 1.5318184466169276, -2 },
                { -0.09066028368875127, -3 },
            },
            planckEinstein: new double[0, 2]),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.09415573664603, 1, 0, 0 },
                { -2.68265247887176, 1, 1, 0 },
                { 1.73403070801418, 1, 2, 0 },
                { -1.63611253452478, 1, 3, 0 },
                { 0.304834511239559, 1, 4, 0 },
                { 0.102771559991302, 2, 0, 0 },
                { -0.023236791408773, 2, 1, 0 },
                { 0.166151971110653, 2, 2, 0 },
                { -0.0250103944487447, 3, 0, 0 },
                { 0.0935681090149423, 3, 1, 0 },
                { 0.043192919662493, 4, 0, 0 },
                { -0.133439867188959, 4, 1, 0 },
                { 0.025541668325497, 5, 1, 0 },
                { -1.04729119771286, 0, 3, 0 },
                { 1.38034128674154, 0, 4, 0 },
                { -0.333625770182218, 0, 5, 0 },
            },
            Exponential = new double[,]
            {
                { -0.510485822124397, 2, 3, 0.99944, 2 },
                { 1.81840742529488, 2, 4, 0.99944, 2 },
                { -1.38530904967474, 2, 5, 0.99944, 2 },
                { 1.04729119771286, 0, 3, 0.99944, 2 },
                { -1.38034128674154, 0, 4, 0.99944, 2 },
                { 0.333625770182218, 0, 5, 0.99944, 2 },
            },
        },
    };
}
