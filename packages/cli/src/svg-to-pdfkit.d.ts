// The part of svg-to-pdfkit this package uses; it comes without types of its own.
declare module 'svg-to-pdfkit' {
  export default function SVGtoPDF(
    doc: PDFKit.PDFDocument,
    svg: string,
    x: number,
    y: number,
    options: {
      width: number;
      height: number;
      preserveAspectRatio: string;
      fontCallback(family: string, bold: boolean): string;
      warningCallback(text: string): void;
    },
  ): void;
}
