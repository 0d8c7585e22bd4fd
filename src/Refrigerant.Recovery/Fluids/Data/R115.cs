using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-115, chloropentafluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R115
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-115",
        Name = "chloropentafluoroethane",
        CasNumber = "76-15-3",
        Source = "Eric W. Lemmon and Roland Span, (2016, submitted), Thermodynamic Properties of R-227ea, R-365mfc, "
            + "R-115, and R13I1, J. Chem. Eng. Data, doi:10.1021/acs.jced.5b00684",
        MolarMass = 0.154466416,
        GasConstant = 8.3144621,
        ReducingTemperature = 353.1,
        ReducingMolarDensity = 3980,
        CriticalTemperature = 353.1,
        CriticalPressure = 3129036.968278708,
        CriticalMolarDensity = 3980,
        AcentricFactor = 0.24843499306634587,
        MinimumTemperature = 173.57,
        MaximumTemperature = 550,
        MaximumPressure = 60000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 7.142, 0.8184650240725007 },
                { 10.61, 3.6845086377796656 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.20873, 1, 0.25, 0 },
                { -3.5446, 1, 1.25, 0 },
                { 0.745302, 1, 1.5, 0 },
                { 0.114128, 3, 0.25, 0 },
                { 0.000436572, 7, 0.875, 0 },
                { 0.988385, 1, 2.375, 1 },
                { 1.13878, 2, 2, 1 },
                { -0.0215633, 5, 2.125, 1 },
                { -0.63023, 1, 3.5, 2 },
                { 0.0167901, 1, 6.5, 2 },
                { -0.149412, 4, 4.75, 2 },
                { -0.0271153, 2, 12.5, 3 },
            },
        },
    };
}
