using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1132(E), trans-1,2-difluoroethene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1132E
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1132(E)",
        Name = "trans-1,2-difluoroethene",
        CasNumber = "1630-78-0",
        Source = "Ryo Akasaka and Eric W. Lemmon, (2024), A Helmholtz Energy Equation of State for Calculations of "
            + "Thermodynamic Properties of trans-1,2-Difluoroethene [R-1132(E)], International Journal of "
            + "Thermophysics, vol. 45, doi:10.1007/s10765-024-03447-8",
        MolarMass = 0.064035,
        GasConstant = 8.314462618,
        ReducingTemperature = 348.82,
        ReducingMolarDensity = 6793,
        CriticalTemperature = 348.82,
        CriticalPressure = 5173700,
        CriticalMolarDensity = 6793,
        AcentricFactor = 0.245,
        MinimumTemperature = 240,
        MaximumTemperature = 400,
        MaximumPressure = 6500000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 4.896, 2.0927699099822257 },
                { 7.111, 6.4761194885614355 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.033144696, 4, 1, 0 },
                { 1.8996205, 1, 0.32, 0 },
                { -2.19051728813, 1, 0.71, 0 },
                { -0.8165909562367, 2, 1.2, 0 },
                { 0.22857476, 3, 0.7, 0 },
                { -1.650708, 1, 2.09, 2 },
                { -1.4409077, 3, 2.24, 2 },
                { 0.60536471, 2, 1.17, 1 },
                { -0.66134087, 2, 2.2, 2 },
                { -0.016787895, 7, 0.823, 1 },
            },
            Gaussian = new double[,]
            {
                { 0.31476822, 1, 3.14, 34.4, 1017, 1.0617, 0.9637 },
                { -0.31991607, 1, 4, 34.28, 1009, 1.062, 0.9636 },
                { 2.2172762, 1, 1.25, 1.303, 1.011, 1.327, 0.8535 },
                { -0.42786753, 1, 1.476, 1.855, 1.05, 1.05, 1.15 },
                { -0.41335541, 1, 1.5, 1.29, 1.33, 1.157, 1.302 },
                { 0.13023087, 1, 0.73, 1.17, 1.61, 1.183, 1.54 },
                { -0.30592804, 1, 1.535, 2.165, 0.8, 1.2, 0.786 },
            },
        },
    };
}
